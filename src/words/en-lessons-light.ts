/** Lessons from light to the gate, in English. Numbers are filled in by the model. */
import type { LessonTexts } from './lesson-words.ts';

export const englishLightLessons = {
  'light-becomes-resistance': {
    title: 'Light becomes resistance',
    aim: 'Less light, more resistance; and why half the light is not twice the resistance.',
    wrongIdeas: [
      '“The cell makes a voltage.” It makes none; it only lets more or less current through.',
      '“Half the light, twice the resistance.” Its slope is below one, so it grows by less.',
    ],
    notes: [
      'Show only light and ohms. Let one pupil call out the ohms while another moves the lamp.',
      'A real cell on a meter makes this lesson twice as good.',
    ],
    steps: {
      look: {
        title: 'A part that feels light',
        text: 'The sensor is a light cell: a resistor whose value follows the light. At {bright} it has {bright-ohms}.',
        question: null,
        options: {},
        task: 'Dim the lamp until the sensor has less than {dim}. Watch the ohms.',
        reveal:
          'At {dim} the cell has {dim-ohms}. The darker it is, the fewer charges are free to move, and the more it resists.',
        algebra: 'R = R₁₀ · (E / 10 lx)^(−γ)',
      },
      half: {
        title: 'Half the light',
        text: 'The lamp gives {full}. The cell has {full-ohms}.',
        question: 'The light falls to half. What does the resistance do?',
        options: {
          halves: 'It halves.',
          stays: 'It stays.',
          'less-than-double': 'It grows, but does not double.',
          doubles: 'It doubles.',
        },
        task: 'Dim the lamp to {half}.',
        reveal: 'At {half} it is {half-ohms}: {factor} times as much. Every halving does the same again.',
        algebra: 'R(E/2) / R(E) = 2^γ = 2^{slope} = {factor}',
      },
      tenfold: {
        title: 'Ten times the resistance',
        text: 'At {full} the cell has {full-ohms}. On the light axis each step to the left is the same factor less light.',
        question: 'How dark must it get until the resistance is tenfold? Point to the place.',
        options: {},
        task: 'Dim the lamp until the cell has nearly tenfold the ohms.',
        reveal:
          'At {far}: the light has to fall {times}-fold. Eye and cell both squeeze a wide range of light into a small one.',
        algebra: 'R · 10  ⇒  E / 10^(1/γ) = E / {times}',
      },
    },
  },
  'two-resistors-share': {
    title: 'Two resistors share the supply',
    aim: 'Which way the node moves, and that it depends on where the cell sits.',
    wrongIdeas: [
      '“Shade means less of everything, so the voltage falls.” The node is the cell’s share; more ohms, larger share.',
      '“The cell is the sensor, so its place does not matter.” Swapped, the node goes the other way.',
    ],
    notes: [
      'This is the step most classes guess the wrong way round. Take the vote before you touch the hand.',
      'Act it out: two pupils share a loaf, the stronger one takes the larger piece.',
    ],
    steps: {
      'which-way': {
        title: 'Which way does the node move?',
        text: 'A fixed resistor of {fixed} hangs from the supply, the cell stands below it. They share {rail}. At {lit} the node between them is at {lit-volts}.',
        question: 'A hand shades the sensor. The voltage at the node …',
        options: { rises: '… rises.', falls: '… falls.', stays: '… stays.' },
        task: 'Bring the hand over sensor A until the node has clearly moved.',
        reveal:
          'It rises. At {shade} the cell has {shade-ohms} and takes the larger share: {shade-volts} instead of {lit-volts}.',
        algebra: 'V_node = V · R_cell / (R_cell + R_S)',
      },
      'other-side': {
        title: 'The cell on the other side',
        text: 'Now the cell hangs from the supply and the fixed resistor stands below. At {lit} the node is at {lit-volts}.',
        question: 'The same hand comes. The voltage at the node …',
        options: { rises: '… rises.', falls: '… falls.', stays: '… stays.' },
        task: 'Shade the sensor again, until the node stands near the middle.',
        reveal:
          'It falls: {shade-volts} at {shade}. Same cell, same hand, other side. Nothing is wrong with either; the comparator only has to know.',
        algebra: 'V_node = V · R_S / (R_cell + R_S)',
      },
      'half-way': {
        title: 'Where the halves are equal',
        text: 'Two equal resistors share equally. The fixed one has {fixed}.',
        question: 'In what light does the node stand at half of {rail}? Point to the place.',
        options: {},
        task: 'Bring the node to the middle: with the lamp, or with another fixed resistor.',
        reveal:
          'At {place}, where the cell too has {fixed}. The node moves most there, so the fixed resistor is chosen for the light you mean to work in.',
        algebra: 'V_node = V/2  ⇔  R_cell = R_S',
      },
      'whole-way': {
        title: 'From dark to bright',
        text: 'All as before: {fixed} above, the cell below. The halves are equal at {place}.',
        question: 'How does the node go, from dark to bright? Sketch it: its volts in five lights.',
        options: {},
        task: 'Take the lamp down to its darkest, then up to its brightest. Follow the node.',
        reveal:
          'It falls all the way, from {dark-volts} at {dark} to {bright-volts} at {bright}: slowly at both ends, fastest around {place}.',
        algebra: 'V_node(E) = V · R(E) / (R(E) + R_S)',
      },
    },
  },
  comparison: {
    title: 'Comparison',
    aim: 'A comparator answers one question only: which of two voltages is higher.',
    wrongIdeas: [
      '“It amplifies the sensor.” It only says above or below.',
      '“To change the sound you must change the light.” Moving the reference does just as well.',
    ],
    notes: ['Scales with two pans help: the node in one, the reference in the other.'],
    steps: {
      scales: {
        title: 'Scales for volts',
        text: 'A trimmer makes a reference of {reference}. The node is at {lit-volts}, below it: the voice is sounding.',
        question: 'In the shade of {shade} the node is at {shade-volts}. The voice is then …',
        options: { sounding: '… sounding.', silent: '… silent.' },
        task: 'Shade sensor A until its node is above the reference.',
        reveal: 'Silent. The node has passed the reference of {reference}; how far does not matter.',
        algebra: 'sounding  ⇔  V_node < V_ref   (cell at the bottom, sounds in light)',
      },
      'move-the-other': {
        title: 'Move the other pan',
        text: 'The light stays as it is: the node is at {lit-volts}, the reference at {reference}.',
        question: 'Which way must the reference go to silence the voice without any shade?',
        options: { up: 'Up.', down: 'Down.' },
        task: 'Turn the threshold trimmer until voice A is silent.',
        reveal: 'Down, below the {lit-volts} of the node. Now even full light counts as shade.',
        algebra: 'V_ref = V · R_below / (R_above + R_below)',
      },
      'turn-it-round': {
        title: 'The other way round',
        text: 'The two wires at the comparator are swapped. At {lit-volts} the voice is silent now.',
        question: 'In the shade, with the node at {shade-volts}, the voice is …',
        options: { sounding: '… sounding.', silent: '… silent.' },
        task: 'Make it dark enough that voice A sounds.',
        reveal:
          'Sounding: above the reference now means sound. A night bird instead of a day bird, by two wires.',
        algebra: 'sounding  ⇔  V_node > V_ref',
      },
    },
  },
  'why-a-shadow-stops-it': {
    title: 'Why does a shadow stop it?',
    aim: 'The whole way: shadow, more ohms, the node rises, the comparator tips, reset, silence. What hysteresis is for, and what the trimmer sets.',
    wrongIdeas: [
      '“The shadow cuts the power.” The supply stays on; a silent voice even draws more.',
      '“It stops and starts at the same light.” There are two places.',
      '“The tone gets lower in half shade.” It is all or nothing.',
    ],
    notes: [
      'The lesson for a first visit. Ask for each arrow of the picture in turn: what happens here, and which way?',
      'With time left, press the key for free play and let pupils set riddles.',
    ],
    steps: {
      listen: {
        title: 'Listen',
        text: 'A hand waves over the two sensors by itself. Two notes come and go.',
        question: null,
        options: {},
        task: 'Listen until voice A has stopped and started again. Who can clap when B does?',
        reveal: 'Each voice has its own sensor. The shadow reaches one a little before the other.',
        algebra: null,
      },
      'which-way': {
        title: 'What does the shadow do?',
        text: 'Lamp on, hands away: both voices sound. Under “node” two resistors share the supply; the lower one is the light cell. The point between them is the node; it stands at {lit-volts}.',
        question: 'A hand comes over sensor A. The voltage at its node …',
        options: { rises: '… rises.', falls: '… falls.', stays: '… stays.' },
        task: 'Bring the hand over sensor A. Follow the picture from left to right, and listen.',
        reveal:
          'It rises, to {shade-volts}: in the shade of {shade} the cell has more ohms and takes the larger share. Past {stop-volts} the comparator tips, holds the timer in reset, and A is silent. B still sees the lamp.',
        algebra: 'V_node = V · R_cell / (R_cell + R_S)',
      },
      'where-it-stops': {
        title: 'Where does it stop?',
        text: 'Now no hand: the lamp itself is dimmed, slowly. Voice A sounds as long as its node stays below the line in the comparison.',
        question: 'At what light does voice A stop? Point to the place.',
        options: {},
        task: 'Dim the lamp until voice A is silent.',
        reveal:
          'At {stop}. There the node reaches {stop-volts}, and the comparator tips. The tone does not fade or sink: it is there, or it is not.',
        algebra: 'E_stop = 10 lx · (R₁₀ / R_trip)^(1/γ),  R_trip = R_S · V_trip / (V − V_trip)',
      },
      'where-it-starts': {
        title: 'And where does it start again?',
        text: 'Voice A is silent. It stopped at {stop}.',
        question: 'The light comes back, slowly. Where does voice A start? Point to the place.',
        options: {},
        task: 'Brighten the lamp until voice A sounds.',
        reveal:
          'Not at {stop}, but at {start}: {gap} times as bright. The gap is made on purpose. It is called hysteresis; what it is for, you hear next.',
        algebra: 'E_start / E_stop = {gap}',
      },
      'what-for': {
        title: 'What is the gap for?',
        text: 'The resistor that makes the gap is taken out: stop and start now lie at one light, {stop}. The lead to the sensor picks up a little noise, as leads do.',
        question: 'The lamp is dimmed slowly to that place. Voice A …',
        options: { cleanly: '… stops cleanly.', stutters: '… stutters.', never: '… does not stop.' },
        task: 'Dim the lamp slowly to about {stop}, until the voice chatters. Then fit the hysteresis resistor.',
        reveal:
          'It stutters, about {rate} times a second: every little wobble of the node tips the comparator. With the resistor each answer moves its own line away by {hysteresis}, more than the noise. That is what hysteresis is for.',
        algebra: 'ΔV ≈ V_out · R_in / (R_in + R_H)',
      },
      'set-it': {
        title: 'You decide what counts as shade',
        text: 'In this light of {lit} voice A sounds; it would stop at {stop}. The threshold trimmer sets the line the node is compared with. It is turned to {turn}.',
        question: 'Turned down to {less-turn}, voice A stops at a light that is …',
        options: { brighter: '… brighter.', darker: '… darker.', same: '… the same.' },
        task: 'Turn the threshold down until voice A stops in this light; then up until it sounds again.',
        reveal:
          'Brighter: at {less-turn} it stops at {stop-less} already. A lower line is reached by the node sooner, so a thinner shadow is enough.',
        algebra: 'V_ref ↓  ⇒  R_trip ↓  ⇒  E_stop ↑',
      },
    },
  },
  'hysteresis-and-chatter': {
    title: 'Hysteresis and chatter',
    aim: 'What hysteresis is for, what it costs, and how to hear that it is missing.',
    wrongIdeas: [
      '“A stutter is a broken part.” Every comparator stutters at its trip point if nothing holds it.',
      '“More hysteresis is always better.” Then the voice starts much later than it stopped.',
    ],
    notes: [
      'The stutter is heard, never shown: the picture says it in words.',
      'A seesaw with a heavy ball on it shows hysteresis: it tips, and stays tipped.',
    ],
    steps: {
      without: {
        title: 'On the edge',
        text: 'No hysteresis, and a long lead to the sensor that picks up a little noise. The light falls slowly to the trip point.',
        question: 'How does the voice stop?',
        options: {
          cleanly: 'Cleanly, at once.',
          stutters: 'It stutters.',
          never: 'It does not stop at all.',
        },
        task: 'Dim the lamp very slowly to about {stop}, until the voice chatters.',
        reveal:
          'It stutters, here about {rate} times a second. At the edge every little wobble of the node tips the scales.',
        algebra: null,
      },
      with: {
        title: 'Something to hold it',
        text: 'The lamp stands exactly at the trip point: the voice stutters about {rate} times a second. A resistor from the comparator’s output back to its input can help.',
        question: 'With that resistor the stutter …',
        options: { stops: '… stops.', slower: '… gets slower.', stays: '… stays.' },
        task: 'Fit the hysteresis resistor, and choose its value until the voice is steady.',
        reveal:
          'It stops. Each answer of the comparator now moves its own reference out of the way, by {hysteresis}, more than the noise.',
        algebra: 'ΔV ≈ V_out · R_in / (R_in + R_H)',
      },
      'two-places': {
        title: 'Two places instead of one',
        text: 'With hysteresis the voice has stopped at {stop}.',
        question: 'Where does it start again? Point to the place.',
        options: {},
        task: 'Brighten the lamp until voice A sounds.',
        reveal:
          'At {start}, {gap} times as bright. Sounding, it stops at {stop-volts}; silent, it starts at {start-volts}.',
        algebra: 'E_start / E_stop = {gap}',
      },
      'too-much': {
        title: 'Too much of it',
        text: 'Somebody has fitted a resistor of a tenth of the usual value.',
        question: 'The gap between stop and start is now …',
        options: { wider: '… wider.', narrower: '… narrower.', same: '… the same.' },
        task: 'Dim the lamp until A stops; then brighten it until A starts again.',
        reveal:
          'Wider: it stops at {stop} and starts at {start}, {gap} times as bright instead of {gap-usual}. A shadow that goes half away does not bring the voice back.',
        algebra: 'R_H ↓  ⇒  ΔV ↑  ⇒  E_start / E_stop ↑',
      },
    },
  },
  'lamp-ripple': {
    title: 'A lamp you can hear',
    aim: 'Some lamps flicker too fast for the eye; a light cell follows them.',
    wrongIdeas: [
      '“What I cannot see is not there.” The cell sees it.',
      '“It flickers as often as the mains swings.” Twice as often: each swing has two humps.',
    ],
    notes: [
      'Nothing on the screen flickers. Say beforehand that the ear will hear a rattle.',
      'Try your own lamps afterwards: with the camera the page tells a ripple if it finds one.',
    ],
    steps: {
      'hear-the-lamp': {
        title: 'Change the lamp',
        text: 'A steady lamp, a little above the trip point, no hysteresis: voice A sounds evenly. In the shop they had a cheap lamp with a poor driver.',
        question: 'To the eye both lamps look alike. With the cheap one the voice …',
        options: { stays: '… stays as it is.', stutters: '… stutters.' },
        task: 'Put the LED lamp with the poor driver in.',
        reveal:
          'It stutters {rate} times a second. The node swings by {swing} and crosses the reference each time.',
        algebra: null,
      },
      'how-often': {
        title: 'How often?',
        text: 'The voice stutters. The mains is a wave that goes up and down.',
        question: 'The light swings …',
        options: { 'as-mains': '… as often as the mains.', twice: '… twice as often.' },
        task: 'Now try other lamps until one leaves the voice steady.',
        reveal:
          'Twice as often, {ripple}: the lamp shines on the way up and on the way down. With a steady lamp the node swings by {steady-swing}, with this one by {poor-swing}.',
        algebra: 'f_light = 2 · f_mains',
      },
      cure: {
        title: 'Can hysteresis cure it?',
        text: 'Under this lamp the node swings by {swing}. The usual hysteresis is {usual}.',
        question: 'With half the usual resistor the hysteresis is {more}. Is that …',
        options: { enough: '… enough?', 'not-enough': '… not enough?' },
        task: 'Choose the hysteresis resistor until the voice is steady under this lamp.',
        reveal:
          'Not enough: the swing of {swing} is still larger than {more}. It takes a smaller resistor yet, and then the gap in light is wide. A better lamp is the better cure.',
        algebra: 'steady  ⇔  ΔV > swing of the node',
      },
    },
  },
} as const satisfies LessonTexts;
