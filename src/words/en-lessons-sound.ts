/** Lessons on the tone, on many kits and on the room, in English. Numbers are filled in by the model. */
import type { LessonTexts } from './lesson-words.ts';

export const englishSoundLessons = {
  'the-first-cycle': {
    title: 'Why the first cycle is longer',
    aim: 'What reset does to the capacitor, and what is heard of it.',
    wrongIdeas: [
      '“A silent voice is switched off.” It is held: its timer waits with an empty capacitor.',
      '“Every cycle is the same.” The first one has a longer way to go.',
    ],
    notes: ['Use the slowed picture. Ask a pupil to follow the capacitor with a finger.'],
    steps: {
      longer: {
        title: 'The first swing',
        text: 'A hand covers sensor A: its voice is held in reset. When it is let go, the output rises at once. In the steady tone it stays high for {high}.',
        question: 'The very first time it stays high …',
        options: { shorter: '… shorter.', same: '… just as long.', longer: '… longer.' },
        task: 'Take the hand away and watch the slowed cycle.',
        reveal: 'Longer: {first} instead of {high}.',
        algebra: 't_high = (R_A + R_B) · C · ln 2,   t_first = (R_A + R_B) · C · ln 3',
      },
      'where-it-waits': {
        title: 'Where the capacitor waits',
        text: 'In the steady tone the capacitor goes up and down between {lower} and {upper}.',
        question: 'And while the voice is held silent, it waits …',
        options: {
          'near-zero': '… near zero volts.',
          'one-third': '… at a third of the supply.',
          'two-thirds': '… at two thirds of the supply.',
        },
        task: 'Cover the sensor, wait for silence, then let the voice go.',
        reveal:
          'Near zero, at {rest}: reset drains it through the discharge pin. From there it is further to {upper} than from {lower}.',
        algebra: 'v(t) = V − (V − v₀) · e^(−t / ((R_A + R_B) · C))',
      },
      'how-much': {
        title: 'How much longer?',
        text: 'The first way goes from near zero to two thirds; every later one from one third to two thirds.',
        question: 'The first swing is longer by …',
        options: {
          'a-tenth': '… about a tenth.',
          'half-again': '… a half and a little more.',
          twice: '… as much again.',
        },
        task: 'Turn the pitch trimmer nearly to its end. Does the share change?',
        reveal:
          '{ratio} times as long; with the trimmer turned {ratio-turned}. The share hardly depends on the parts: it is in the thirds.',
        algebra: 'ln 3 / ln 2 ≈ 1.585, a little less when the pin does not reach zero',
      },
    },
  },
  'tone-and-trimmer': {
    title: 'Tone, trimmer and pitch',
    aim: 'What sets the pitch: resistors and capacitor. What does not: the light.',
    wrongIdeas: [
      '“More light, higher tone.” Light only says whether it sounds.',
      '“A larger trimmer value is higher.” More ohms fill the capacitor more slowly.',
    ],
    notes: ['A glass filled by a thin or a thick straw is a fair picture of a capacitor and its resistor.'],
    steps: {
      turn: {
        title: 'Turn the trimmer',
        text: 'Voice A plays {before-note}, {before}.',
        question: 'The pitch trimmer is turned up to {turned}: more resistance. The tone gets …',
        options: { higher: '… higher.', lower: '… lower.', same: '… neither.' },
        task: 'Turn the pitch trimmer of A well up.',
        reveal: 'Lower: {after-note}, {after}. With more ohms the capacitor fills and empties more slowly.',
        algebra: 'f = 1 / (ln 2 · (R_A + 2 R_B) · C)',
      },
      'light-and-pitch': {
        title: 'Does light change the pitch?',
        text: 'Voice A plays {frequency} at {full}.',
        question: 'The light is halved, and the voice still sounds. The tone is then …',
        options: { higher: '… higher.', lower: '… lower.', same: '… the same.' },
        task: 'Dim the lamp to about {half}, so that voice A still sounds.',
        reveal:
          'The same: {frequency-half}. The light cell is not in the timer; it only says whether the voice sounds.',
        algebra: null,
      },
      capacitor: {
        title: 'Half the capacitor',
        text: 'Voice A plays {before-note}, {before}.',
        question: 'A capacitor of half the value is fitted. The tone is then …',
        options: {
          'octave-up': '… an octave higher.',
          'octave-down': '… an octave lower.',
          'fifth-up': '… a fifth higher.',
        },
        task: 'Choose a smaller capacitor for A until it stands about a fourth above B.',
        reveal:
          'An octave higher: {after-note}, {after}, {ratio} times as fast. Half the capacitor is filled in half the time.',
        algebra: 'f ∝ 1 / C',
      },
      'a-fifth': {
        title: 'Find the fifth',
        text: 'Voice B plays {b-note}, {b-frequency}. Voice A has been turned away.',
        question: null,
        options: {},
        task: 'Turn the pitch of A until it stands a fifth below B. Listen for the beats to slow down.',
        reveal: 'Two to three: while A swings twice, B swings three times. Then the beats stand still.',
        algebra: 'f_B : f_A = 3 : 2',
      },
    },
  },
  'duty-and-timbre': {
    title: 'Duty and timbre',
    aim: 'High and low need not be equally long, and the ear hears the share.',
    wrongIdeas: ['“A square wave is a square wave.” Its share of high decides which partials it has.'],
    notes: ['Turn the volume down first: new partials sound louder than they measure.'],
    steps: {
      shares: {
        title: 'High and low',
        text: 'The capacitor fills through two resistors and empties through one of them.',
        question: 'The output is high for …',
        options: {
          less: '… less than half of the time.',
          half: '… exactly half of it.',
          more: '… more than half of it.',
        },
        task: 'Make the charge resistor of A larger until the share is clearly above a half.',
        reveal: 'More than half: {duty}. High lasts {high}, low only {low}.',
        algebra: 'duty = (R_A + R_B) / (R_A + 2 R_B)',
      },
      colour: {
        title: 'Another colour',
        text: 'Now the share is {duty}, close to a half. The octave above is hardly in the sound: it stands at {second}.',
        question: 'With a much larger charge resistor, which partial comes up?',
        options: { second: 'The octave.', none: 'None.' },
        task: 'Make the charge resistor of A larger and listen for the octave.',
        reveal:
          'The octave: at a share of {duty-more} it stands at {second-more}. The sound is thinner and brighter.',
        algebra: 'a₂ / a₁ = |cos(π · duty)|',
      },
      'pitch-too': {
        title: 'It also moves the pitch',
        text: 'Voice A plays {before}.',
        question: 'A larger charge resistor makes the tone …',
        options: { higher: '… higher.', lower: '… lower.', same: '… neither.' },
        task: 'Make the charge resistor larger until the tone has clearly moved.',
        reveal:
          'Lower, {after}: it takes longer to fill. Colour and pitch hang together here; the trimmer brings the pitch back.',
        algebra: 'f = 1 / (ln 2 · (R_A + 2 R_B) · C)',
      },
    },
  },
  'thirty-kits': {
    title: 'Why thirty kits differ',
    aim: 'Equal parts are not equal, and what a trimmer is for.',
    wrongIdeas: [
      '“Mine is different, so I made a mistake.” Parts of one bag differ.',
      '“One mark on the trimmer fits all.” It fits the kit it was made on.',
    ],
    notes: ['Let the class compare their own trimmer positions afterwards; they will not agree.'],
    steps: {
      'one-mark': {
        title: 'One mark for all',
        text: 'There are {kits} kits from one parts list. All thresholds are set to the same mark, the best for light of {lit} and shade of {shade}.',
        question: 'How many of them sound in the light and stop in the shade?',
        options: { few: 'Fewer than half.', most: 'Most, but not all.', all: 'All.' },
        task: 'Put other cells of the same bag in, until voice A is silent in this light.',
        reveal:
          '{right} of {kits}. In a deep shade of {deep} it would be {right-deep}: a stronger contrast forgives more.',
        algebra: 'E_trip ∝ R₁₀^(1/γ)',
      },
      'its-own-turn': {
        title: 'Each its own turn',
        text: 'This kit has a cell from the upper end of the bag. Voice A is silent although it should sound.',
        question: 'Which way must the threshold trimmer go?',
        options: { up: 'Up.', down: 'Down.' },
        task: 'Turn the threshold until voice A sounds.',
        reveal:
          'Up: this node stands higher, so the reference must too. Among the {kits} kits the right turn lies anywhere from {least} to {most}.',
        algebra: 'V_ref / V = R_cell / (R_cell + R_S)',
      },
      'and-its-pitch': {
        title: 'And its own pitch',
        text: 'Now the pitch. All {kits} kits have their trimmers at the same mark.',
        question: 'How far is the lowest from the highest?',
        options: {
          'a-hair': 'Next to nothing.',
          semitones: 'Some semitones.',
          octaves: 'More than an octave.',
        },
        task: 'This kit has a slightly large capacitor. Turn the pitch of A until it stands a fifth below B again.',
        reveal:
          'Some semitones: {apart}. That is why the pitch has a trimmer, and why a class tunes before it plays.',
        algebra: 'Δf / f ≈ −(ΔR / R + ΔC / C)',
      },
    },
  },
  'this-very-room': {
    title: 'The threshold for this very room',
    aim: 'Set the threshold where it is needed: in the light that is here now.',
    wrongIdeas: ['“Set once, right for ever.” The light of a room moves through the day.'],
    notes: [
      'Ask before a camera sees anybody; point it at a wall or at the ceiling. The lesson also runs without one.',
      'Set it again when the sun has moved. Then ask the class why that was needed.',
    ],
    steps: {
      'on-paper': {
        title: 'On paper first',
        text: 'A sensor gets {lit}, and {shade} with a hand over it.',
        question: 'Which light is the best place to switch? Point to it.',
        options: {},
        task: 'Turn the threshold until the voice starts near that place.',
        reveal:
          '{middle}: as many times darker than the light as brighter than the shade. The middle of factors, not of differences.',
        algebra: 'E = √(E_lit · E_shade)',
      },
      'look-around': {
        title: 'Look around',
        text: 'Two patches of the camera’s picture can stand for the two sensors. Without a camera the lamp on the stage does.',
        question: null,
        options: {},
        task: 'Switch the camera on if you like. Then shade sensor A until it gets less than {shade}.',
        reveal: 'The picture itself stays on this device. From each one only two numbers are taken.',
        algebra: null,
      },
      'just-on': {
        title: 'Turn to just on',
        text: 'The voices start at {start}. They should start just below the light of this room.',
        question: null,
        options: {},
        task: 'Leave the sensors in the light in which they should sound, and turn the threshold until they just do.',
        reveal:
          'That is how it is done on the day: give the light that should sound, turn until it just does. Any less light stops it.',
        algebra: 'V_ref = V_node(E_room)',
      },
      'does-it-hold': {
        title: 'Does it hold?',
        text: 'Now somebody walks past, or a hand comes.',
        question: null,
        options: {},
        task: 'Shade sensor A until voice A stops; let the light back until it starts.',
        reveal:
          'Between stopping and starting the light has to grow {gap}-fold. A cloud that changes it by less does nothing.',
        algebra: null,
      },
    },
  },
} as const satisfies LessonTexts;
