/** Lessons from light to the gate, in German. Numbers are filled in by the model. */
import type { englishLightLessons } from './en-lessons-light.ts';
import type { Translated } from './lesson-words.ts';

export const germanLightLessons: Translated<typeof englishLightLessons> = {
  'light-becomes-resistance': {
    title: 'Aus Licht wird Widerstand',
    aim: 'Weniger Licht, mehr Widerstand; und warum halbes Licht nicht den doppelten Widerstand ergibt.',
    wrongIdeas: [
      '„Die Zelle macht eine Spannung.“ Sie macht keine; sie lässt nur mehr oder weniger Strom durch.',
      '„Halbes Licht, doppelter Widerstand.“ Ihre Steigung ist kleiner als eins, er wächst also um weniger.',
    ],
    notes: [
      'Nur Licht und Ohm zeigen. Ein Kind ruft die Ohm aus, ein anderes bewegt die Lampe.',
      'Eine echte Zelle am Messgerät macht diese Lektion doppelt so gut.',
    ],
    steps: {
      look: {
        title: 'Ein Bauteil, das Licht spürt',
        text: 'Der Sensor ist ein Fotowiderstand: ein Widerstand, dessen Wert dem Licht folgt. Bei {bright} hat er {bright-ohms}.',
        question: null,
        options: {},
        task: 'Dimmt die Lampe, bis der Sensor weniger als {dim} bekommt. Achtet auf die Ohm.',
        reveal:
          'Bei {dim} hat die Zelle {dim-ohms}. Je dunkler es ist, desto weniger Ladungen sind beweglich, und desto mehr widersteht sie.',
        algebra: 'R = R₁₀ · (E / 10 lx)^(−γ)',
      },
      half: {
        title: 'Halbes Licht',
        text: 'Die Lampe gibt {full}. Die Zelle hat {full-ohms}.',
        question: 'Das Licht sinkt auf die Hälfte. Was macht der Widerstand?',
        options: {
          halves: 'Er halbiert sich.',
          stays: 'Er bleibt gleich.',
          'less-than-double': 'Er wächst, verdoppelt sich aber nicht.',
          doubles: 'Er verdoppelt sich.',
        },
        task: 'Dimmt die Lampe auf {half}.',
        reveal:
          'Bei {half} sind es {half-ohms}: das {factor}-Fache. Jede weitere Halbierung macht dasselbe noch einmal.',
        algebra: 'R(E/2) / R(E) = 2^γ = 2^{slope} = {factor}',
      },
      tenfold: {
        title: 'Der zehnfache Widerstand',
        text: 'Bei {full} hat die Zelle {full-ohms}. Auf der Lichtachse ist jeder Schritt nach links derselbe Faktor weniger Licht.',
        question: 'Wie dunkel muss es werden, bis der Widerstand zehnmal so groß ist? Zeigt auf die Stelle.',
        options: {},
        task: 'Dimmt die Lampe, bis die Zelle fast zehnmal so viele Ohm hat.',
        reveal:
          'Bei {far}: Das Licht muss {times}-mal kleiner werden. Auge und Zelle drängen beide einen weiten Bereich von Licht in einen kleinen.',
        algebra: 'R · 10  ⇒  E / 10^(1/γ) = E / {times}',
      },
    },
  },
  'two-resistors-share': {
    title: 'Zwei Widerstände teilen sich die Spannung',
    aim: 'Wohin der Knoten wandert, und dass es davon abhängt, wo die Zelle sitzt.',
    wrongIdeas: [
      '„Schatten heißt von allem weniger, also sinkt die Spannung.“ Der Knoten ist der Anteil der Zelle; mehr Ohm, größerer Anteil.',
      '„Die Zelle ist der Sensor, ihr Platz ist egal.“ Vertauscht wandert der Knoten andersherum.',
    ],
    notes: [
      'Hier raten die meisten Klassen falsch herum. Lasst abstimmen, bevor ihr die Hand bewegt.',
      'Spielt es vor: Zwei teilen sich ein Brot, der Stärkere nimmt das größere Stück.',
    ],
    steps: {
      'which-way': {
        title: 'Wohin wandert der Knoten?',
        text: 'Ein fester Widerstand von {fixed} hängt an der Versorgung, darunter steht die Zelle. Sie teilen sich {rail}. Bei {lit} liegt der Knoten dazwischen auf {lit-volts}.',
        question: 'Eine Hand beschattet den Sensor. Die Spannung am Knoten …',
        options: { rises: '… steigt.', falls: '… sinkt.', stays: '… bleibt.' },
        task: 'Bringt die Hand über Sensor A, bis der Knoten deutlich gewandert ist.',
        reveal:
          'Sie steigt. Bei {shade} hat die Zelle {shade-ohms} und nimmt den größeren Anteil: {shade-volts} statt {lit-volts}.',
        algebra: 'V_Knoten = V · R_Zelle / (R_Zelle + R_S)',
      },
      'other-side': {
        title: 'Die Zelle auf der anderen Seite',
        text: 'Nun hängt die Zelle an der Versorgung, und der feste Widerstand steht darunter. Bei {lit} liegt der Knoten auf {lit-volts}.',
        question: 'Dieselbe Hand kommt. Die Spannung am Knoten …',
        options: { rises: '… steigt.', falls: '… sinkt.', stays: '… bleibt.' },
        task: 'Beschattet den Sensor wieder, bis der Knoten nahe der Mitte liegt.',
        reveal:
          'Sie sinkt: {shade-volts} bei {shade}. Dieselbe Zelle, dieselbe Hand, die andere Seite. Beides ist richtig; der Komparator muss es nur wissen.',
        algebra: 'V_Knoten = V · R_S / (R_Zelle + R_S)',
      },
      'half-way': {
        title: 'Wo beide Hälften gleich sind',
        text: 'Zwei gleiche Widerstände teilen gleich. Der feste hat {fixed}.',
        question: 'Bei welchem Licht liegt der Knoten auf der Hälfte von {rail}? Zeigt auf die Stelle.',
        options: {},
        task: 'Bringt den Knoten in die Mitte: mit der Lampe oder mit einem anderen festen Widerstand.',
        reveal:
          'Bei {place}, wo auch die Zelle {fixed} hat. Dort wandert der Knoten am meisten; man wählt den festen Widerstand darum nach dem Licht, in dem gespielt wird.',
        algebra: 'V_Knoten = V/2  ⇔  R_Zelle = R_S',
      },
      'whole-way': {
        title: 'Von dunkel bis hell',
        text: 'Alles wie eben: {fixed} oben, die Zelle unten. Bei {place} sind die Hälften gleich.',
        question: 'Wie geht der Knoten von dunkel bis hell? Skizziert es: seine Volt in fünf Lichtern.',
        options: {},
        task: 'Dimmt die Lampe ganz herunter, macht sie dann so hell, wie es geht. Folgt dem Knoten.',
        reveal:
          'Er sinkt den ganzen Weg, von {dark-volts} bei {dark} auf {bright-volts} bei {bright}: langsam an beiden Enden, am schnellsten um {place}.',
        algebra: 'V_Knoten(E) = V · R(E) / (R(E) + R_S)',
      },
    },
  },
  comparison: {
    title: 'Vergleichen',
    aim: 'Ein Komparator beantwortet nur eine Frage: Welche von zwei Spannungen ist höher?',
    wrongIdeas: [
      '„Er verstärkt den Sensor.“ Er sagt nur: darüber oder darunter.',
      '„Um den Klang zu ändern, muss man das Licht ändern.“ Die Referenz zu verschieben hilft genauso.',
    ],
    notes: ['Eine Waage mit zwei Schalen hilft: in der einen der Knoten, in der anderen die Referenz.'],
    steps: {
      scales: {
        title: 'Eine Waage für Volt',
        text: 'Ein Trimmpoti macht eine Referenz von {reference}. Der Knoten liegt mit {lit-volts} darunter: Die Stimme klingt.',
        question: 'Im Schatten von {shade} liegt der Knoten auf {shade-volts}. Dann ist die Stimme …',
        options: { sounding: '… zu hören.', silent: '… still.' },
        task: 'Beschattet Sensor A, bis sein Knoten über der Referenz liegt.',
        reveal: 'Still. Der Knoten hat die Referenz von {reference} überschritten; wie weit, ist gleich.',
        algebra: 'klingt  ⇔  V_Knoten < V_Ref   (Zelle unten, klingt bei Licht)',
      },
      'move-the-other': {
        title: 'Die andere Schale bewegen',
        text: 'Das Licht bleibt, wie es ist: Der Knoten liegt auf {lit-volts}, die Referenz auf {reference}.',
        question: 'Wohin muss die Referenz, damit die Stimme ganz ohne Schatten still wird?',
        options: { up: 'Nach oben.', down: 'Nach unten.' },
        task: 'Dreht das Schwellen-Trimmpoti, bis Stimme A still ist.',
        reveal: 'Nach unten, unter die {lit-volts} des Knotens. Nun gilt sogar volles Licht als Schatten.',
        algebra: 'V_Ref = V · R_unten / (R_oben + R_unten)',
      },
      'turn-it-round': {
        title: 'Andersherum',
        text: 'Die zwei Drähte am Komparator sind vertauscht. Bei {lit-volts} ist die Stimme jetzt still.',
        question: 'Im Schatten, mit dem Knoten auf {shade-volts}, ist die Stimme …',
        options: { sounding: '… zu hören.', silent: '… still.' },
        task: 'Macht es so dunkel, dass Stimme A klingt.',
        reveal:
          'Zu hören: Über der Referenz heißt nun Klang. Ein Nachtvogel statt eines Tagvogels, durch zwei Drähte.',
        algebra: 'klingt  ⇔  V_Knoten > V_Ref',
      },
    },
  },
  'why-a-shadow-stops-it': {
    title: 'Warum hört es im Schatten auf?',
    aim: 'Der ganze Weg: Schatten, mehr Ohm, der Knoten steigt, der Komparator kippt, Reset, Stille. Wozu Hysterese da ist, und was das Trimmpoti einstellt.',
    wrongIdeas: [
      '„Der Schatten nimmt den Strom weg.“ Die Versorgung bleibt an; eine stille Stimme braucht sogar mehr.',
      '„Es hört beim selben Licht auf und fängt beim selben Licht an.“ Es sind zwei Stellen.',
      '„Im halben Schatten wird der Ton tiefer.“ Es geht um alles oder nichts.',
    ],
    notes: [
      'Die Lektion für den ersten Besuch. Fragt bei jedem Pfeil des Bildes: Was geschieht hier, und wohin?',
      'Bleibt Zeit, drückt die Taste für freies Spiel und lasst die Klasse Rätsel stellen.',
    ],
    steps: {
      listen: {
        title: 'Hört zu',
        text: 'Eine Hand winkt von selbst über den zwei Sensoren. Zwei Töne kommen und gehen.',
        question: null,
        options: {},
        task: 'Hört zu, bis Stimme A aufgehört und wieder angefangen hat. Wer klatscht, wenn es B tut?',
        reveal:
          'Jede Stimme hat ihren eigenen Sensor. Der Schatten erreicht den einen etwas früher als den anderen.',
        algebra: null,
      },
      'which-way': {
        title: 'Was tut der Schatten?',
        text: 'Lampe an, Hände weg: Beide Stimmen klingen. Unter „Knoten“ teilen sich zwei Widerstände die Versorgung; der untere ist der Fotowiderstand. Der Punkt dazwischen ist der Knoten; er liegt bei {lit-volts}.',
        question: 'Eine Hand kommt über Sensor A. Die Spannung an seinem Knoten …',
        options: { rises: '… steigt.', falls: '… sinkt.', stays: '… bleibt.' },
        task: 'Bringt die Hand über Sensor A. Folgt dem Bild von links nach rechts, und hört zu.',
        reveal:
          'Sie steigt, auf {shade-volts}: Im Schatten von {shade} hat die Zelle mehr Ohm und bekommt den größeren Teil. Über {stop-volts} kippt der Komparator, hält den Timer im Reset, und A ist still. B sieht die Lampe noch.',
        algebra: 'V_Knoten = V · R_Zelle / (R_Zelle + R_S)',
      },
      'where-it-stops': {
        title: 'Wo hört es auf?',
        text: 'Nun ohne Hand: Die Lampe selbst wird gedimmt, langsam. Stimme A klingt, solange ihr Knoten unter der Linie im Vergleich bleibt.',
        question: 'Bei welchem Licht hört Stimme A auf? Zeigt auf die Stelle.',
        options: {},
        task: 'Dimmt die Lampe, bis Stimme A still ist.',
        reveal:
          'Bei {stop}. Dort erreicht der Knoten {stop-volts}, und der Komparator kippt. Der Ton wird nicht leiser und nicht tiefer: Er ist da, oder er ist es nicht.',
        algebra: 'E_Ende = 10 lx · (R₁₀ / R_K)^(1/γ),  R_K = R_S · V_K / (V − V_K)',
      },
      'where-it-starts': {
        title: 'Und wo fängt es wieder an?',
        text: 'Stimme A ist still. Aufgehört hat sie bei {stop}.',
        question: 'Das Licht kommt zurück, langsam. Wo fängt Stimme A an? Zeigt auf die Stelle.',
        options: {},
        task: 'Macht die Lampe heller, bis Stimme A klingt.',
        reveal:
          'Nicht bei {stop}, sondern bei {start}: {gap}-mal so hell. Die Lücke ist Absicht. Sie heißt Hysterese; wozu sie gut ist, hört ihr gleich.',
        algebra: 'E_Anfang / E_Ende = {gap}',
      },
      'what-for': {
        title: 'Wozu die Lücke?',
        text: 'Der Widerstand, der die Lücke macht, ist ausgebaut: Ende und Anfang liegen nun bei einem Licht, {stop}. Die Leitung zum Sensor fängt ein wenig Rauschen ein, wie Leitungen es tun.',
        question: 'Die Lampe wird langsam bis dorthin gedimmt. Stimme A …',
        options: { cleanly: '… hört sauber auf.', stutters: '… stottert.', never: '… hört nicht auf.' },
        task: 'Dimmt die Lampe langsam bis etwa {stop}, bis die Stimme rattert. Setzt dann den Hysterese-Widerstand ein.',
        reveal:
          'Sie stottert, etwa {rate}-mal in der Sekunde: Jedes kleine Wackeln des Knotens kippt den Komparator. Mit dem Widerstand rückt jede Antwort ihre eigene Linie um {hysteresis} weg, mehr als das Rauschen. Dazu ist Hysterese da.',
        algebra: 'ΔV ≈ V_Aus · R_Ein / (R_Ein + R_H)',
      },
      'set-it': {
        title: 'Ihr bestimmt, was Schatten ist',
        text: 'In diesem Licht von {lit} klingt Stimme A; aufhören würde sie bei {stop}. Das Schwellen-Trimmpoti stellt die Linie ein, mit der der Knoten verglichen wird. Es steht auf {turn}.',
        question: 'Auf {less-turn} zurückgedreht, hört Stimme A bei einem Licht auf, das …',
        options: { brighter: '… heller ist.', darker: '… dunkler ist.', same: '… gleich ist.' },
        task: 'Dreht die Schwelle herunter, bis Stimme A in diesem Licht aufhört; dann hinauf, bis sie wieder klingt.',
        reveal:
          'Heller: Auf {less-turn} hört sie schon bei {stop-less} auf. Eine tiefere Linie erreicht der Knoten früher, ein dünnerer Schatten genügt also.',
        algebra: 'V_Ref ↓  ⇒  R_K ↓  ⇒  E_Ende ↑',
      },
    },
  },
  'hysteresis-and-chatter': {
    title: 'Hysterese und Rattern',
    aim: 'Wozu Hysterese gut ist, was sie kostet, und wie man hört, dass sie fehlt.',
    wrongIdeas: [
      '„Wenn es stottert, ist etwas kaputt.“ Jeder Komparator stottert an seinem Kipppunkt, wenn ihn nichts hält.',
      '„Mehr Hysterese ist immer besser.“ Dann fängt die Stimme viel später an, als sie aufgehört hat.',
    ],
    notes: [
      'Das Stottern hört man, man sieht es nie: Das Bild sagt es mit Worten.',
      'Eine Wippe mit einer schweren Kugel zeigt Hysterese: Sie kippt und bleibt gekippt.',
    ],
    steps: {
      without: {
        title: 'Auf der Kante',
        text: 'Keine Hysterese, und eine lange Leitung zum Sensor, die etwas Rauschen einfängt. Das Licht sinkt langsam bis zum Kipppunkt.',
        question: 'Wie hört die Stimme auf?',
        options: {
          cleanly: 'Sauber, auf einmal.',
          stutters: 'Sie stottert.',
          never: 'Sie hört gar nicht auf.',
        },
        task: 'Dimmt die Lampe ganz langsam bis etwa {stop}, bis die Stimme rattert.',
        reveal:
          'Sie stottert, hier etwa {rate}-mal in der Sekunde. Auf der Kante kippt jedes kleine Wackeln des Knotens die Waage.',
        algebra: null,
      },
      with: {
        title: 'Etwas, das sie hält',
        text: 'Die Lampe steht genau auf dem Kipppunkt: Die Stimme stottert etwa {rate}-mal in der Sekunde. Ein Widerstand vom Ausgang des Komparators zurück an seinen Eingang kann helfen.',
        question: 'Mit diesem Widerstand …',
        options: {
          stops: '… hört das Stottern auf.',
          slower: '… wird es langsamer.',
          stays: '… bleibt es.',
        },
        task: 'Setzt den Hysterese-Widerstand ein und wählt seinen Wert, bis die Stimme ruhig ist.',
        reveal:
          'Es hört auf. Jede Antwort des Komparators schiebt nun seine eigene Referenz aus dem Weg, um {hysteresis}, mehr als das Rauschen.',
        algebra: 'ΔV ≈ V_aus · R_ein / (R_ein + R_H)',
      },
      'two-places': {
        title: 'Zwei Stellen statt einer',
        text: 'Mit Hysterese hat die Stimme bei {stop} aufgehört.',
        question: 'Wo fängt sie wieder an? Zeigt auf die Stelle.',
        options: {},
        task: 'Macht die Lampe heller, bis Stimme A klingt.',
        reveal:
          'Bei {start}, {gap}-mal so hell. Klingend hört sie bei {stop-volts} auf; still fängt sie bei {start-volts} an.',
        algebra: 'E_Anfang / E_Ende = {gap}',
      },
      'too-much': {
        title: 'Zu viel davon',
        text: 'Jemand hat einen Widerstand vom zehnten Teil des üblichen Werts eingesetzt.',
        question: 'Die Lücke zwischen Aufhören und Anfangen ist nun …',
        options: { wider: '… breiter.', narrower: '… schmaler.', same: '… gleich.' },
        task: 'Dimmt die Lampe, bis A aufhört; dann macht sie heller, bis A wieder anfängt.',
        reveal:
          'Breiter: Sie hört bei {stop} auf und fängt bei {start} an, {gap}-mal so hell statt {gap-usual}-mal. Ein Schatten, der halb weggeht, bringt die Stimme nicht zurück.',
        algebra: 'R_H ↓  ⇒  ΔV ↑  ⇒  E_Anfang / E_Ende ↑',
      },
    },
  },
  'lamp-ripple': {
    title: 'Eine Lampe, die man hört',
    aim: 'Manche Lampen flimmern zu schnell für das Auge; ein Fotowiderstand folgt ihnen.',
    wrongIdeas: [
      '„Was ich nicht sehe, ist nicht da.“ Die Zelle sieht es.',
      '„Sie flimmert so oft, wie das Netz schwingt.“ Doppelt so oft: Jede Schwingung hat zwei Buckel.',
    ],
    notes: [
      'Auf dem Bildschirm flimmert nichts. Sagt vorher, dass das Ohr ein Rattern hören wird.',
      'Probiert danach eure eigenen Lampen: Mit der Kamera meldet die Seite ein Flimmern, wenn sie eines findet.',
    ],
    steps: {
      'hear-the-lamp': {
        title: 'Die Lampe wechseln',
        text: 'Eine ruhige Lampe, etwas über dem Kipppunkt, keine Hysterese: Stimme A klingt gleichmäßig. Im Laden gab es eine billige Lampe mit schlechtem Netzteil.',
        question: 'Für das Auge sehen beide gleich aus. Mit der billigen Lampe …',
        options: { stays: '… bleibt die Stimme, wie sie ist.', stutters: '… stottert die Stimme.' },
        task: 'Setzt die LED-Lampe mit dem schlechten Netzteil ein.',
        reveal:
          'Sie stottert {rate}-mal in der Sekunde. Der Knoten schwingt um {swing} und kreuzt jedes Mal die Referenz.',
        algebra: null,
      },
      'how-often': {
        title: 'Wie oft?',
        text: 'Die Stimme stottert. Das Stromnetz ist eine Welle, die auf und ab geht.',
        question: 'Das Licht schwingt …',
        options: { 'as-mains': '… so oft wie das Netz.', twice: '… doppelt so oft.' },
        task: 'Probiert nun andere Lampen, bis eine die Stimme in Ruhe lässt.',
        reveal:
          'Doppelt so oft, {ripple}: Die Lampe leuchtet auf dem Weg hinauf und auf dem Weg hinab. Mit einer ruhigen Lampe schwingt der Knoten um {steady-swing}, mit dieser um {poor-swing}.',
        algebra: 'f_Licht = 2 · f_Netz',
      },
      cure: {
        title: 'Hilft Hysterese?',
        text: 'Unter dieser Lampe schwingt der Knoten um {swing}. Die übliche Hysterese ist {usual}.',
        question: 'Mit dem halben üblichen Widerstand beträgt sie {more}. Ist das …',
        options: { enough: '… genug?', 'not-enough': '… nicht genug?' },
        task: 'Wählt den Hysterese-Widerstand, bis die Stimme unter dieser Lampe ruhig ist.',
        reveal:
          'Nicht genug: Die Schwingung von {swing} ist immer noch größer als {more}. Es braucht einen noch kleineren Widerstand, und dann ist die Lücke im Licht breit. Eine bessere Lampe hilft mehr.',
        algebra: 'ruhig  ⇔  ΔV > Schwingung des Knotens',
      },
    },
  },
};
