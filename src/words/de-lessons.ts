/** Everything a class reads, in German. The same shape as the English; whatever is missing does not compile. */
import { germanLightLessons } from './de-lessons-light.ts';
import { germanSoundLessons } from './de-lessons-sound.ts';
import type { englishLessons } from './en-lessons.ts';
import type { Translated } from './lesson-words.ts';

export const germanLessons: Translated<typeof englishLessons> = {
  lessons: { ...germanLightLessons, ...germanSoundLessons },
  minutes: 'etwa {minutes} Minuten',
  parts: {
    aim: 'Ziel',
    wrongIdeas: 'Womit zu rechnen ist',
    notes: 'Für alle, die unterrichten',
    cautions: 'Vorsicht',
    question: 'Erst raten',
    task: 'Nun probieren',
    reveal: 'Was herauskam',
    algebra: 'Als Formel',
  },
  stages: {
    lux: 'Licht',
    ohms: 'Widerstand',
    volts: 'Knoten',
    compare: 'Vergleich',
    gate: 'Gate',
    tone: 'Ton',
  },
  modes: {
    shown: 'sichtbar',
    hidden: 'verdeckt',
    frozen: 'angehalten',
    slowed: '{times}-mal verlangsamt',
  },
  says: {
    voice: { A: 'Stimme A', B: 'Stimme B' },
    hidden: 'Verdeckt, bis ihr geraten habt.',
    lux: 'Der Sensor bekommt {lux}.',
    ohms: 'Die Zelle hat {ohms}.',
    volts: 'Der Knoten liegt auf {node} von {rail}.',
    compareAbove: 'Der Knoten liegt über dem Kipppunkt von {trip}.',
    compareBelow: 'Der Knoten liegt unter dem Kipppunkt von {trip}.',
    compareNever: 'Keine Spannung am Knoten ändert hier etwas.',
    sounding: 'Der Reset-Stift ist losgelassen, bei {reset}: Die Stimme klingt.',
    silent: 'Der Reset-Stift wird unten gehalten, bei {reset}: Die Stimme schweigt.',
    chattering: 'Das Gate rattert: schnelle Wechsel, hier nur mit Worten gesagt.',
    tone: '{note}, {frequency}; hoch während {duty} jeder Schwingung.',
    waiting: 'Kein Ton; es wäre {note}, {frequency}.',
    noTone: 'Diese Stimme kann nicht schwingen: Ihr Kondensator erreicht nicht beide Pegel.',
    high: 'Verlangsamt: Der Ausgang ist hoch, der Kondensator steigt, jetzt {capacitor}.',
    low: 'Verlangsamt: Der Ausgang ist tief, der Kondensator sinkt, jetzt {capacitor}.',
  },
  controls: {
    lamp: 'Lampe',
    'room light': 'Raumlicht',
    'hand A': 'Hand über A',
    'hand B': 'Hand über B',
    'mains lamp': 'Art der Lampe',
    threshold: 'Schwellen-Trimmpoti',
    'just on': 'Drehen, bis sie gerade klingen',
    'pitch A': 'Tonhöhen-Trimmpoti A',
    'pitch B': 'Tonhöhen-Trimmpoti B',
    'charge resistor A': 'Ladewiderstand von A',
    'charge resistor B': 'Ladewiderstand von B',
    'capacitor A': 'Kondensator von A',
    'capacitor B': 'Kondensator von B',
    hysteresis: 'Hysterese-Widerstand',
    'cell side': 'Zelle',
    'sounds in': 'klingt bei',
    'fixed resistor': 'fester Widerstand',
    cell: 'eine andere Zelle (ihre Ohm bei zehn Lux)',
    noise: 'Rauschen auf der Leitung',
    camera: 'Kamera einschalten',
  },
  choices: {
    top: 'oben',
    bottom: 'unten',
    light: 'Licht',
    shade: 'Schatten',
    steady: 'eine ruhige Lampe',
    none: 'keiner eingesetzt',
    incandescent: 'eine Glühlampe',
    halogen: 'eine Netz-Halogenlampe',
    'fluorescent-magnetic': 'eine Leuchtstoffröhre mit Drossel',
    'compact-magnetic': 'eine Kompaktleuchtstofflampe mit Drossel',
    'compact-electronic': 'eine Kompaktleuchtstofflampe mit Vorschaltgerät',
    'metal-halide': 'eine Halogen-Metalldampflampe',
    'sodium-high-pressure': 'eine Natriumdampf-Hochdrucklampe',
    'led-smooth': 'eine LED-Lampe mit gutem Netzteil',
    'led-poor': 'eine LED-Lampe mit schlechtem Netzteil',
    'led-rectified': 'eine LED-Lampe an gleichgerichtetem Netz',
  },
  notices: {
    'flickers in the ear':
      'In diesem Schritt rattert der Klang schnell. Nur das Ohr hört es; auf dem Bildschirm blitzt nichts. Dreht erst die Lautstärke zurück und sagt es der Klasse.',
    camera:
      'Dieser Schritt kann die Kamera nutzen. Sie bleibt aus, bis ihr auf ihren Knopf drückt. Fragt alle, die zu sehen sein könnten; das Bild bleibt auf diesem Gerät. Es geht auch ohne sie weiter.',
  },
  go: {
    understood: 'Verstanden, anfangen',
    pass: 'Weiter, ohne zu raten',
    stand: 'Die Vermutung steht',
    show: 'Zeigen, was herauskam',
    showAnyway: 'Trotzdem zeigen',
    next: 'Nächster Schritt',
    finish: 'Lektion beenden',
    back: 'Ein Schritt zurück',
    restart: 'Von vorn',
    reset: 'Diesen Schritt neu aufbauen',
    free: 'Freies Spiel',
    toLesson: 'Zurück zur Lektion',
    leave: 'Lektion verlassen; euer eigener Entwurf kommt zurück',
  },
  verdict: {
    right: 'Genau wie vermutet.',
    other: 'Nicht wie vermutet. Das Modell sagt: {answer}',
    near: 'Gefunden: Ihr habt auf {guess} gezeigt, es sind {answer}.',
    far: 'Ihr habt auf {guess} gezeigt; es sind {answer}: um den Faktor {off} daneben.',
    passed: 'Das Modell sagt: {answer}',
    passedPlace: 'Das Modell sagt: {answer}.',
    sketch: '{found} von {points} Punkten liegen nahe am Modell.',
  },
  hands: {
    heading: 'Handzeichen',
    count: 'Hände für „{option}“',
    none: 'Noch keine Hände gezählt.',
  },
  met: {
    waiting: 'Noch zu tun: {task}',
    part: 'Gesehen. Und nun das Übrige.',
    done: 'Geschafft. Nun seht, was herauskam.',
  },
  sheet: {
    title: 'Arbeitsblatt {number}',
    answers: 'Lösungen zu Blatt {number}',
    who: 'Nummer {number} (bitte keine Namen)',
    hint: 'Die Werte sind auf jedem Blatt andere. Schreibt zu jeder Antwort die Einheit.',
    round: {
      figures: 'Antwort auf {n} geltende Ziffern.',
      decimals: 'Antwort auf {n} Stellen nach dem Komma.',
    },
    accept: 'Gilt als richtig: bis zu {share} daneben.',
    reason: 'Sagt, warum.',
    questions: {
      'cell-ohms':
        'Ein Fotowiderstand hat {r10} bei {reference}, mit einer Steigung von {slope}. Wie groß ist sein Widerstand bei {lux}?',
      'half-light':
        'Das Licht auf dieser Zelle sinkt auf die Hälfte. Auf das Wievielfache wächst ihr Widerstand?',
      'node-volts-bottom':
        'Ein Widerstand von {fixed} hängt an {rail}, darunter steht die Zelle mit {cell}. Wie groß ist die Spannung am Knoten dazwischen?',
      'node-volts-top':
        'Die Zelle mit {cell} hängt an {rail}, darunter steht ein Widerstand von {fixed}. Wie groß ist die Spannung am Knoten dazwischen?',
      'which-way-bottom': 'Eine Hand beschattet die Zelle; sie steht unten. Steigt oder sinkt der Knoten?',
      'which-way-top': 'Eine Hand beschattet die Zelle; sie hängt oben. Steigt oder sinkt der Knoten?',
      reference:
        'Ein Schwellen-Trimmpoti hat {above} über seinem Schleifer und {below} darunter, an {rail}. Wie groß ist die Referenz?',
      'sounding-below':
        'Die Stimme klingt, solange ihr Knoten unter der Referenz liegt. Bei {lux} liegt der Knoten auf {node}. Klingt die Stimme, oder ist sie still?',
      'sounding-above':
        'Die Stimme klingt, solange ihr Knoten über der Referenz liegt. Bei {lux} liegt der Knoten auf {node}. Klingt die Stimme, oder ist sie still?',
      frequency:
        'Eine Stimme hat einen Ladewiderstand von {ra}, insgesamt {rb} als zweiten Widerstand und einen Kondensator von {farads}. Wie hoch ist ihre Frequenz?',
      duty: 'Welchen Anteil jeder Schwingung ist ihr Ausgang hoch?',
      'first-high':
        'Im gleichmäßigen Ton bleibt ihr Ausgang {high} lang hoch. Wie lang bleibt er beim ersten Mal nach langer Stille hoch?',
    },
    options: { rises: 'er steigt', falls: 'er sinkt', sounding: 'sie klingt', silent: 'sie schweigt' },
  },
};
