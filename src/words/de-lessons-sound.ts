/** Lessons on the tone, on many kits and on the room, in German. Numbers are filled in by the model. */
import type { englishSoundLessons } from './en-lessons-sound.ts';
import type { Translated } from './lesson-words.ts';

export const germanSoundLessons: Translated<typeof englishSoundLessons> = {
  'the-first-cycle': {
    title: 'Warum die erste Schwingung länger dauert',
    aim: 'Was der Reset mit dem Kondensator macht, und was man davon hört.',
    wrongIdeas: [
      '„Eine stille Stimme ist ausgeschaltet.“ Sie wird gehalten: Ihr Timer wartet mit leerem Kondensator.',
      '„Jede Schwingung ist gleich.“ Die erste hat einen weiteren Weg.',
    ],
    notes: ['Nehmt das verlangsamte Bild. Ein Kind folgt dem Kondensator mit dem Finger.'],
    steps: {
      longer: {
        title: 'Der erste Schwung',
        text: 'Eine Hand deckt Sensor A zu: Seine Stimme wird im Reset gehalten. Lässt man sie los, geht der Ausgang sofort hoch. Im gleichmäßigen Ton bleibt er {high} lang hoch.',
        question: 'Beim allerersten Mal bleibt er …',
        options: { shorter: '… kürzer hoch.', same: '… gleich lang hoch.', longer: '… länger hoch.' },
        task: 'Nehmt die Hand weg und schaut auf die verlangsamte Schwingung.',
        reveal: 'Länger: {first} statt {high}.',
        algebra: 't_hoch = (R_A + R_B) · C · ln 2,   t_erst = (R_A + R_B) · C · ln 3',
      },
      'where-it-waits': {
        title: 'Wo der Kondensator wartet',
        text: 'Im gleichmäßigen Ton wandert der Kondensator zwischen {lower} und {upper} auf und ab.',
        question: 'Und solange die Stimme still gehalten wird, wartet er …',
        options: {
          'near-zero': '… nahe null Volt.',
          'one-third': '… bei einem Drittel der Versorgung.',
          'two-thirds': '… bei zwei Dritteln der Versorgung.',
        },
        task: 'Deckt den Sensor zu, wartet auf die Stille, dann lasst die Stimme los.',
        reveal:
          'Nahe null, bei {rest}: Der Reset leert ihn über den Entladestift. Von dort ist es weiter bis {upper} als von {lower}.',
        algebra: 'v(t) = V − (V − v₀) · e^(−t / ((R_A + R_B) · C))',
      },
      'how-much': {
        title: 'Wie viel länger?',
        text: 'Der erste Weg führt von nahe null bis zwei Drittel; jeder spätere von einem Drittel bis zwei Drittel.',
        question: 'Der erste Schwung ist länger um …',
        options: {
          'a-tenth': '… etwa ein Zehntel.',
          'half-again': '… die Hälfte und etwas mehr.',
          twice: '… noch einmal so viel.',
        },
        task: 'Dreht das Tonhöhen-Trimmpoti fast bis ans Ende. Ändert sich der Anteil?',
        reveal:
          'Das {ratio}-Fache; mit gedrehtem Trimmpoti das {ratio-turned}-Fache. Der Anteil hängt kaum von den Teilen ab: Er steckt in den Dritteln.',
        algebra: 'ln 3 / ln 2 ≈ 1,585, etwas weniger, wenn der Stift nicht ganz auf null kommt',
      },
    },
  },
  'tone-and-trimmer': {
    title: 'Ton, Trimmpoti und Tonhöhe',
    aim: 'Was die Tonhöhe bestimmt: Widerstände und Kondensator. Was nicht: das Licht.',
    wrongIdeas: [
      '„Mehr Licht, höherer Ton.“ Licht sagt nur, ob es klingt.',
      '„Ein größerer Trimmerwert ist höher.“ Mehr Ohm füllen den Kondensator langsamer.',
    ],
    notes: [
      'Ein Glas, das durch einen dünnen oder dicken Halm voll wird, ist ein gutes Bild für Kondensator und Widerstand.',
    ],
    steps: {
      turn: {
        title: 'Am Trimmpoti drehen',
        text: 'Stimme A spielt {before-note}, {before}.',
        question: 'Das Tonhöhen-Trimmpoti wird auf {turned} gedreht: mehr Widerstand. Der Ton wird …',
        options: { higher: '… höher.', lower: '… tiefer.', same: '… keins von beiden.' },
        task: 'Dreht das Tonhöhen-Trimmpoti von A deutlich auf.',
        reveal: 'Tiefer: {after-note}, {after}. Mit mehr Ohm füllt und leert sich der Kondensator langsamer.',
        algebra: 'f = 1 / (ln 2 · (R_A + 2 R_B) · C)',
      },
      'light-and-pitch': {
        title: 'Ändert Licht die Tonhöhe?',
        text: 'Stimme A spielt {frequency} bei {full}.',
        question: 'Das Licht wird halbiert, und die Stimme klingt noch. Der Ton ist dann …',
        options: { higher: '… höher.', lower: '… tiefer.', same: '… derselbe.' },
        task: 'Dimmt die Lampe auf etwa {half}, so dass Stimme A noch klingt.',
        reveal:
          'Derselbe: {frequency-half}. Der Fotowiderstand sitzt nicht im Timer; er sagt nur, ob die Stimme klingt.',
        algebra: null,
      },
      capacitor: {
        title: 'Der halbe Kondensator',
        text: 'Stimme A spielt {before-note}, {before}.',
        question: 'Ein Kondensator vom halben Wert wird eingesetzt. Der Ton ist dann …',
        options: {
          'octave-up': '… eine Oktave höher.',
          'octave-down': '… eine Oktave tiefer.',
          'fifth-up': '… eine Quinte höher.',
        },
        task: 'Wählt für A einen kleineren Kondensator, bis sie etwa eine Quarte über B steht.',
        reveal:
          'Eine Oktave höher: {after-note}, {after}, {ratio}-mal so schnell. Der halbe Kondensator ist in der halben Zeit voll.',
        algebra: 'f ∝ 1 / C',
      },
      'a-fifth': {
        title: 'Die Quinte finden',
        text: 'Stimme B spielt {b-note}, {b-frequency}. Stimme A ist verdreht worden.',
        question: null,
        options: {},
        task: 'Dreht an der Tonhöhe von A, bis sie eine Quinte unter B steht. Hört, wie die Schwebungen langsamer werden.',
        reveal:
          'Zwei zu drei: Während A zweimal schwingt, schwingt B dreimal. Dann stehen die Schwebungen still.',
        algebra: 'f_B : f_A = 3 : 2',
      },
    },
  },
  'duty-and-timbre': {
    title: 'Tastverhältnis und Klangfarbe',
    aim: 'Hoch und tief müssen nicht gleich lang sein, und das Ohr hört den Anteil.',
    wrongIdeas: ['„Rechteck ist Rechteck.“ Der Anteil von hoch entscheidet, welche Teiltöne es hat.'],
    notes: ['Dreht erst die Lautstärke zurück: Neue Teiltöne klingen lauter, als man misst.'],
    steps: {
      shares: {
        title: 'Hoch und tief',
        text: 'Der Kondensator füllt sich durch zwei Widerstände und leert sich durch einen davon.',
        question: 'Der Ausgang ist hoch …',
        options: {
          less: '… weniger als die halbe Zeit.',
          half: '… genau die halbe Zeit.',
          more: '… mehr als die halbe Zeit.',
        },
        task: 'Macht den Ladewiderstand von A größer, bis der Anteil deutlich über der Hälfte liegt.',
        reveal: 'Mehr als die Hälfte: {duty}. Hoch dauert {high}, tief nur {low}.',
        algebra: 'Tastverhältnis = (R_A + R_B) / (R_A + 2 R_B)',
      },
      colour: {
        title: 'Eine andere Farbe',
        text: 'Nun ist der Anteil {duty}, nahe der Hälfte. Die Oktave darüber ist kaum im Klang: Sie steht auf {second}.',
        question: 'Mit einem viel größeren Ladewiderstand: Welcher Teilton kommt hervor?',
        options: { second: 'Die Oktave.', none: 'Keiner.' },
        task: 'Macht den Ladewiderstand von A größer und hört auf die Oktave.',
        reveal:
          'Die Oktave: Bei einem Anteil von {duty-more} steht sie auf {second-more}. Der Klang ist dünner und heller.',
        algebra: 'a₂ / a₁ = |cos(π · Tastverhältnis)|',
      },
      'pitch-too': {
        title: 'Auch die Tonhöhe wandert',
        text: 'Stimme A spielt {before}.',
        question: 'Ein größerer Ladewiderstand macht den Ton …',
        options: { higher: '… höher.', lower: '… tiefer.', same: '… keins von beiden.' },
        task: 'Macht den Ladewiderstand größer, bis der Ton deutlich gewandert ist.',
        reveal:
          'Tiefer, {after}: Das Füllen dauert länger. Farbe und Tonhöhe hängen hier zusammen; das Trimmpoti holt die Tonhöhe zurück.',
        algebra: 'f = 1 / (ln 2 · (R_A + 2 R_B) · C)',
      },
    },
  },
  'thirty-kits': {
    title: 'Warum dreißig Bausätze verschieden sind',
    aim: 'Gleiche Teile sind nicht gleich, und wozu ein Trimmpoti da ist.',
    wrongIdeas: [
      '„Meiner ist anders, also habe ich etwas falsch gemacht.“ Teile aus einer Tüte sind verschieden.',
      '„Eine Marke am Trimmpoti passt für alle.“ Sie passt für den Bausatz, an dem sie gemacht wurde.',
    ],
    notes: [
      'Lasst die Klasse danach ihre eigenen Trimmpoti-Stellungen vergleichen; sie werden nicht gleich sein.',
    ],
    steps: {
      'one-mark': {
        title: 'Eine Marke für alle',
        text: 'Es gibt {kits} Bausätze nach einer Teileliste. Alle Schwellen stehen auf derselben Marke, gemacht an einem mittleren Bausatz für Licht von {lit} und Schatten von {shade}.',
        question: 'Wie viele klingen im Licht und hören im Schatten auf?',
        options: { few: 'Weniger als die Hälfte.', most: 'Die meisten, nicht alle.', all: 'Alle.' },
        task: 'Setzt andere Zellen aus derselben Tüte ein, bis Stimme A in diesem Licht still ist.',
        reveal:
          '{right} von {kits}. In tiefem Schatten von {deep} wären es {right-deep}: Ein stärkerer Unterschied verzeiht mehr.',
        algebra: 'E_Kipp ∝ R₁₀^(1/γ)',
      },
      'its-own-turn': {
        title: 'Jeder seine eigene Stellung',
        text: 'Dieser Bausatz hat eine Zelle vom oberen Ende der Tüte. Stimme A ist still, obwohl sie klingen sollte.',
        question: 'Wohin muss das Schwellen-Trimmpoti?',
        options: { up: 'Nach oben.', down: 'Nach unten.' },
        task: 'Dreht die Schwelle, bis Stimme A klingt.',
        reveal:
          'Nach oben: Dieser Knoten liegt höher, also muss es die Referenz auch. Unter den {kits} Bausätzen liegt die richtige Stellung irgendwo von {least} bis {most}.',
        algebra: 'V_Ref / V = R_Zelle / (R_Zelle + R_S)',
      },
      'and-its-pitch': {
        title: 'Und seine eigene Tonhöhe',
        text: 'Nun die Tonhöhe. Alle {kits} Bausätze haben ihre Trimmpotis auf derselben Marke.',
        question: 'Wie weit liegen der tiefste und der höchste auseinander?',
        options: {
          'a-hair': 'So gut wie gar nicht.',
          semitones: 'Einige Halbtöne.',
          octaves: 'Mehr als eine Oktave.',
        },
        task: 'Dieser Bausatz hat einen etwas großen Kondensator. Dreht an der Tonhöhe von A, bis sie wieder eine Quinte unter B steht.',
        reveal:
          'Einige Halbtöne: {apart}. Darum hat die Tonhöhe ein Trimmpoti, und darum stimmt eine Klasse, bevor sie spielt.',
        algebra: 'Δf / f ≈ −(ΔR / R + ΔC / C)',
      },
    },
  },
  'this-very-room': {
    title: 'Die Schwelle für genau diesen Raum',
    aim: 'Die Schwelle dort einstellen, wo man sie braucht: im Licht, das jetzt hier ist.',
    wrongIdeas: ['„Einmal eingestellt, immer richtig.“ Das Licht eines Raums wandert durch den Tag.'],
    notes: [
      'Fragt, bevor eine Kamera jemanden sieht; richtet sie auf eine Wand oder die Decke. Die Lektion geht auch ohne.',
      'Stellt sie neu ein, wenn die Sonne gewandert ist. Fragt dann die Klasse, warum das nötig war.',
    ],
    steps: {
      'on-paper': {
        title: 'Zuerst auf dem Papier',
        text: 'Ein Sensor bekommt {lit}, und {shade} mit einer Hand darüber.',
        question: 'Welches Licht ist die beste Stelle zum Umschalten? Zeigt darauf.',
        options: {},
        task: 'Dreht die Schwelle, bis die Stimme nahe dieser Stelle anfängt.',
        reveal:
          '{middle}: so vielmal dunkler als das Licht wie heller als der Schatten. Die Mitte der Faktoren, nicht der Abstände.',
        algebra: 'E = √(E_Licht · E_Schatten)',
      },
      'look-around': {
        title: 'Schaut euch um',
        text: 'Zwei Flecken im Kamerabild können für die zwei Sensoren stehen. Ohne Kamera tut es die Lampe auf der Bühne.',
        question: null,
        options: {},
        task: 'Schaltet die Kamera ein, wenn ihr mögt. Dann beschattet Sensor A, bis er weniger als {shade} bekommt.',
        reveal: 'Das Bild selbst bleibt auf diesem Gerät. Aus jedem werden nur zwei Zahlen genommen.',
        algebra: null,
      },
      'just-on': {
        title: 'Bis sie gerade klingen',
        text: 'Die Stimmen fangen bei {start} an. Sie sollten knapp unter dem Licht dieses Raums anfangen.',
        question: null,
        options: {},
        task: 'Lasst den Sensoren das Licht, in dem sie klingen sollen, und dreht die Schwelle, bis sie es gerade tun.',
        reveal:
          'So macht man es am Tag selbst: das Licht geben, das klingen soll, drehen, bis es gerade klingt. Ein dünner Schatten genügt dann, und es hört auf.',
        algebra: 'V_Ref = V_Knoten(E_Raum)',
      },
      'does-it-hold': {
        title: 'Hält es?',
        text: 'Nun geht jemand vorbei, oder eine Hand kommt.',
        question: null,
        options: {},
        task: 'Beschattet Sensor A, bis Stimme A aufhört; lasst das Licht zurück, bis sie anfängt.',
        reveal:
          'Zwischen Aufhören und Anfangen muss das Licht auf das {gap}-Fache wachsen. Eine Wolke, die es um weniger ändert, lässt sie nicht flattern.',
        algebra: null,
      },
    },
  },
};
