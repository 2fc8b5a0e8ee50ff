/** The words of every warning in German: what is so, what to do about it, and what the limit rests on. */
import { formatFixed, formatNumber, formatQuantity, formatShare } from '../quantity/format.ts';
import type { Translated } from './spoken.ts';
import type { WARNING_WORDS, warningWho } from './warnings.ts';

const volts = (value: number): string => formatQuantity(value, 'V', 3);
const ohms = (value: number): string => formatQuantity(value, 'Ω', 2);
const amperes = (value: number): string => formatQuantity(value, 'A', 2);
const hertz = (value: number): string => formatQuantity(value, 'Hz', 3);
const watts = (value: number): string => formatQuantity(value, 'W', 2);
const seconds = (value: number): string => formatQuantity(value, 's', 2);
const lux = (value: number): string => `${formatNumber(value, 2)}\u00A0lx`;
const cents = (value: number): string => `${formatFixed(Math.abs(value), value < 10 ? 1 : 0)} Cent`;

export const germanWho: Translated<typeof warningWho> = {
  instrument: 'Das Instrument',
  voice: (voice) => `Stimme ${voice}`,
};

export const germanWarnings: Translated<typeof WARNING_WORDS> = {
  'no-hysteresis': {
    reason: (f) =>
      `Es gibt keine Hysterese, und der Knoten trägt ${volts(f.noiseVolts)} effektives Rauschen: Nahe ihrem Kipppunkt stottert die Stimme.`,
    remedy: () =>
      'Einen Hysteresewiderstand von 470 kΩ bis 1 MΩ vom Ausgang des Komparators zu seinem +-Eingang einbauen, hinter einem Eingangswiderstand von 10 kΩ.',
    source: 'Anwendungshinweise LM393-N (SNOSBJ6): 1 bis 10 mV Mitkopplung beenden es',
  },
  'lamp-ripple': {
    reason: (f) =>
      `Eine Lampe, die um ${formatShare(f.depth)} mit ${hertz(f.hertz)} flimmert, bewegt den Knoten bei ${lux(f.lux)} um ${volts(f.swingVolts)}, mehr als die Hysterese von ${volts(f.hysteresisVolts)}: Das Gate schnarrt, wenn das Licht am Kipppunkt steht.`,
    remedy: () =>
      'Einen kleineren Hysteresewiderstand nehmen, bis die Hysterese über dieser Bewegung liegt, oder eine Lampe, die nicht flimmert (Batterielampe, Tageslicht).',
    source:
      'gerechnet: die Hysterese muss die ganze Bewegung übertreffen; 30 % hat eine gewöhnliche LED-Lampe',
  },
  'threshold-misses-rooms': {
    reason: (f) =>
      f.fromLux === null || f.toLux === null
        ? 'Das Schwellen-Trimmpoti erreicht von Anschlag zu Anschlag gar kein Licht.'
        : `Von Anschlag zu Anschlag erreicht die Schwelle ${lux(f.fromLux)} bis ${lux(f.toLux)}. Übliche Räume verlangen ${lux(f.wantedFromLux)} bis ${lux(f.wantedToLux)}.`,
    remedy: () =>
      'Den festen Widerstand des Teilers nahe an den Widerstand bringen, den die Zelle in der Mitte des gewünschten Lichts hat, und kleinere Endwiderstände am Trimmpoti nehmen.',
    source: 'Räume nach EN 12464-1 mit 100 bis 1000 lx, und eine Hand, die neun Zehntel davon nimmt',
  },
  'light-changes-nothing': {
    reason: (f) =>
      `So wie die Schwelle gedreht ist, ${!f.starts && !f.stops ? 'ändert kein Licht diese Stimme' : f.starts ? 'hält kein Licht diese Stimme an' : 'startet kein Licht diese Stimme'}.`,
    remedy: () =>
      'Die Schwelle zur Mitte drehen oder den festen Widerstand des Teilers näher an den Widerstand der Zelle bringen.',
    source: 'gerechnet',
  },
  'grade-spread': {
    reason: (f) =>
      `Zellen dieser einen Sorte haben bei 10 lx ${ohms(f.leastOhms)} bis ${ohms(f.mostOhms)}, also liegt dieselbe Schwelle irgendwo zwischen ${formatShare(f.fromRotation)} und ${formatShare(f.toRotation)} des Wegs: Eine Marke passt nicht für jede Platine.`,
    remedy: () =>
      'Jede Platine nach ihrem eigenen Licht einstellen, oder die Zellen messen und in Gruppen sortieren.',
    source: 'veröffentlichte Spanne der Zellenfamilie; 10 % des Wegs sind gängige Praxis',
  },
  'cells-unequal': {
    reason: (f) =>
      `Die Zellen unterscheiden sich: A setzt bei ${lux(f.luxA)} ein und B bei ${lux(f.luxB)}, unter demselben Licht.`,
    remedy: () =>
      'Zwei Zellen paaren, die im selben Licht dasselbe zeigen, oder jeder Stimme ihre eigene Schwelle geben.',
    source: 'gerechnet; ein Viertel Unterschied ist gängige Praxis',
  },
  'slow-fall': {
    reason: (f) =>
      `Diese Zelle braucht ${seconds(f.fallSeconds)}, um Dunkelheit zu bemerken (auf 37 % bei 10 lx), also hinkt die Stimme der Hand nach.`,
    remedy: () =>
      'Für schnelles Spiel eine Familie wählen, die in 50 ms oder weniger abfällt, oder in hellerem Licht arbeiten.',
    source: 'Datenblatt der Zellenfamilie; 0,1 s als Grenze von „sofort“ sind gängige Praxis',
  },
  'touchable-node': {
    reason: (f) =>
      `An seinem Kipppunkt hat der Sensorknoten ${ohms(f.nodeOhms)}: Ein Finger von 2 bis 3 MΩ über den Beinen verschiebt ihn.`,
    remedy: () =>
      'Die Beine der Zelle isolieren, oder Zelle und festen Widerstand niederohmiger wählen, zusammen unter 100 kΩ.',
    source: 'ein Finger von 2 bis 3 MΩ verschiebt 100 kΩ um etwa 5 %; gerechnet',
  },
  'long-lead': {
    reason: (f) =>
      `Im Dunkeln hat der Sensorknoten ${ohms(f.nodeOhms)}: Eine lange Leitung fängt dort Netzbrumm ein und schaltet das Gate, wie es kommt.`,
    remedy: () =>
      'Die Leitung kurz halten oder schirmen, 10 nF vom Knoten nach 0 V legen, oder die Zelle nach unten setzen mit einem festen Widerstand unter 100 kΩ.',
    source: 'gängige Praxis',
  },
  'sounds-in-shade': {
    reason: (f) =>
      `Diese Stimme klingt im Dunkeln und schweigt im Licht: Die Zelle sitzt in ihrem Teiler ${f.cell === 'top' ? 'oben' : 'unten'}, und die Eingänge des Komparators ergeben sich daraus.`,
    remedy: () =>
      'Soll sie im Licht klingen, die beiden Eingänge des Komparators tauschen, oder die Zelle und ihren festen Widerstand, aber nicht beides.',
    source: 'gerechnet aus der Richtung des Teilers',
  },
  'unplugged-sounds': {
    reason: (f) =>
      `Mit ausgestecktem Sensor geht der Knoten auf ${volts(f.nodeVolts)}, und die Stimme klingt ohne Ende.`,
    remedy: () =>
      'So hört man eine gebrochene Leitung. Soll sie dann schweigen, die Stimme im Licht klingen lassen.',
    source: 'gerechnet: eine offene Zelle zählt als dunkel',
  },
  'cell-heat': {
    reason: (f) =>
      `In hellem Licht kann die Zelle ${watts(f.watts)} aufnehmen, mehr als die zulässigen ${watts(f.mostWatts)}.`,
    remedy: (f) => `Den festen Widerstand des Teilers mindestens ${ohms(f.leastOhms)} groß machen.`,
    source: 'V²/(4·R), gegen den Grenzwert der Zellenfamilie',
  },
  cadmium: {
    reason: () =>
      'Die Fotowiderstände enthalten Cadmium, und der Verkauf von Bausätzen damit ist in manchen Ländern eingeschränkt.',
    remedy: () =>
      'Vor Verkauf oder Einfuhr von Bausätzen nachfragen, die Zellen zur Entsorgung einsammeln, oder mit einem Fototransistor planen.',
    source: 'RoHS-Richtlinie der EU (Ausnahme endete am 31. Dezember 2013)',
  },
  'reference-above-range': {
    reason: (f) =>
      `Die Referenz von ${volts(f.referenceVolts)} liegt über dem Eingangsbereich des Komparators, der bei ${volts(f.limitVolts)} endet.`,
    remedy: () =>
      'Den Widerstand über dem Schwellen-Trimmpoti einbauen oder vergrößern, damit die Referenz im Bereich bleibt.',
    source: 'Datenblätter LM393: Eingänge bis V+ − 1,5 V bei 25 °C',
  },
  'node-above-range': {
    reason: (f) =>
      `Der Sensorknoten erreicht ${volts(f.nodeVolts)}, mehr als der Eingangsbereich des Komparators (${volts(f.limitVolts)}). Solange die Referenz darin bleibt, stimmt der Ausgang trotzdem.`,
    remedy: () => 'Nichts ist zu ändern; die Referenz im Bereich halten.',
    source: 'TI SLCS005AG, „Input voltage range“',
  },
  'both-above-range': {
    reason: (f) =>
      `Referenz und Knoten können beide über dem Eingangsbereich des Komparators liegen (Knoten bis ${volts(f.nodeVolts)}, Bereich bis ${volts(f.limitVolts)}). Dann verspricht kein Hersteller, was er tut; dieser Chip geht eher nach ${f.output === 'low' ? 'tief' : 'hoch'}.`,
    remedy: () =>
      'Die Referenz mit einem größeren Widerstand über dem Trimmpoti senken, oder die Zelle auf die andere Seite des Teilers setzen.',
    source: 'TI LM2901B-Q1, Liste der Eingangsbereiche',
  },
  'never-sounds': {
    reason: (f) =>
      `Der Pull-up lässt den Reset-Stift auf ${volts(f.resetVolts)}, und der braucht mehr als ${volts(f.neededVolts)}: Die Stimme kann nie klingen.`,
    remedy: (f) => `Einen Pull-up unter ${ohms(f.mostOhms)} nehmen.`,
    source: 'TI SLFS023: Reset-Pegel und Reset-Strom, typisch',
  },
  'never-silent': {
    reason: (f) =>
      `Der Komparator kann den Reset-Stift nur auf ${volts(f.resetVolts)} ziehen, und der braucht weniger als ${volts(f.neededVolts)}: Die Stimme kann nie zum Schweigen gebracht werden.`,
    remedy: (f) => `Einen Pull-up über ${ohms(f.leastOhms)} nehmen.`,
    source: 'TI SLFS023: Reset-Pegel; Sättigung des Komparators wie gedruckt',
  },
  'reset-half': {
    reason: (f) =>
      `Während sie schweigt, steht der Reset-Stift auf ${volts(f.resetVolts)}, zwischen ${volts(f.fromVolts)} und ${volts(f.toVolts)}, wo ein Timer halb gehalten sein kann: eine falsche Tonhöhe, oder ein Ton, der nicht aufhört.`,
    remedy: (f) => `Einen größeren Pull-up nehmen, damit der Stift unter ${volts(f.fromVolts)} fällt.`,
    source: 'TI SLFS023: Reset-Pegel mindestens 0,3 V, typisch 0,7 V',
  },
  'reset-low-worst': {
    reason: (f) =>
      `Mit dem schwächsten Komparator und dem gierigsten Timer fällt der Reset-Stift nur auf ${volts(f.resetVolts)}; sicher sind ${volts(f.neededVolts)}. Manche Platinen schweigen dann vielleicht nicht.`,
    remedy: (f) =>
      Number.isFinite(f.leastOhms)
        ? `Einen Pull-up von mindestens ${ohms(f.leastOhms)} nehmen.`
        : 'Einen größeren Pull-up nehmen, und einen CMOS-Timer, wenn das nicht reicht.',
    source: 'TI SLFS023: 1,5 mA aus dem Stift, 0,3 V; Komparator 400 mV bei 4 mA',
  },
  'reset-high-worst': {
    reason: (f) =>
      `An einer Schiene von ${volts(f.railVolts)} zieht der gierigste Timer seinen Reset-Stift auf ${volts(f.resetVolts)} herunter; er braucht mehr als ${volts(f.neededVolts)}. Manche Platinen klingen dort nicht.`,
    remedy: (f) => `Einen Pull-up unter ${ohms(f.mostOhms)} nehmen.`,
    source: 'TI SLFS023: 0,4 mA in den Stift, 1,0 V',
  },
  'comparator-overloaded': {
    reason: (f) =>
      `Der Ausgang des Komparators muss ${amperes(f.amperes)} aufnehmen; geprüft ist er laut Datenblatt bei ${amperes(f.ratedAmperes)}.`,
    remedy: () => 'Einen größeren Pull-up nehmen.',
    source: 'onsemi LM393/D: Sättigung bei 4 mA',
  },
  'hysteresis-wide': {
    reason: (f) =>
      `Das Licht, das diese Stimme anhält, und das, das sie wieder startet, liegen ${formatNumber(f.ratio, 2)} zu 1 auseinander: Einmal gewechselt, scheint sie zu kleben.`,
    remedy: (f) =>
      `Einen größeren Hysteresewiderstand als ${ohms(f.hysteresisOhms)} nehmen; prüfen, ob er um eine Zehnerpotenz zu klein ist.`,
    source: 'gerechnet; 2 : 1 ist gängige Praxis, eine Hand nimmt etwa 10 : 1',
  },
  'thresholds-interact': {
    reason: (f) =>
      `Wenn die andere Stimme einsetzt, verschiebt sich der Kipppunkt dieser um ${formatShare(f.share)}, weil beide auf ein Trimmpoti zurückwirken.`,
    remedy: () => 'Jeder Stimme ihr eigenes Trimmpoti geben, oder ein niederohmigeres nehmen.',
    source: 'gerechnet; 5 % sind gängige Praxis',
  },
  'touchy-threshold': {
    reason: (f) =>
      `Zwischen ${lux(f.fromLux)} und ${lux(f.toLux)} dreht sich das Schwellen-Trimmpoti nur um ${formatFixed(f.degrees, 0)}°.`,
    remedy: () =>
      'Den festen Widerstand des Teilers nahe an den Widerstand der Zelle in diesem Licht bringen, die Endwiderstände vergrößern, oder ein Trimmpoti mit 25 Umdrehungen einbauen.',
    source: 'gerechnet; 45° für den Schatten einer Hand sind gängige Praxis',
  },
  'no-pitch': {
    reason: (f) =>
      f.controlVolts === null
        ? `An ${volts(f.railVolts)} erreicht der Kondensator nie beide Pegel, also gibt es keine Tonhöhe.`
        : `Mit ${volts(f.controlVolts)} am Steuerstift und ${volts(f.railVolts)} an der Schiene erreicht der Kondensator nie beide Pegel.`,
    remedy: () =>
      'Den Steuerstift frei lassen, oder ihn zwischen einem Drittel und neun Zehnteln der Schiene halten.',
    source: 'gerechnet',
  },
  'rb-near-zero': {
    reason: (f) =>
      `Am Anschlag fällt RB auf ${ohms(f.leastOhms)}, und die Tonhöhe steigt auf ${hertz(f.topHertz)}: ein schriller Ton oder keiner, und das Trimmpoti trägt die Entladung.`,
    remedy: () =>
      'Einen festen Widerstand von mindestens 4,7 kΩ in Reihe mit dem Tonhöhen-Trimmpoti einbauen.',
    source: 'TI SLFS022: RA und RB ab 1 kΩ in den Bedingungen der Genauigkeit',
  },
  'ra-too-small': {
    reason: (f) =>
      `RA von ${ohms(f.ohms)} lässt ${amperes(f.amperes)} in den Entladestift fließen, sobald der Ausgang tief ist: Chip und Batterie leiden.`,
    remedy: (f) => `RA mindestens ${ohms(f.leastOhms)} groß machen, besser 3,9 kΩ.`,
    source: 'TI SLFS022: RA ab 1 kΩ in den Bedingungen der Genauigkeit',
  },
  'resistors-too-large': {
    reason: (f) =>
      `RA und RB kommen zusammen auf ${ohms(f.ohms)}; über ${ohms(f.mostOhms)} kann der eigene Strom des Schwellenstifts den Kondensator unter seinem Pegel halten.`,
    remedy: () => 'Kleinere Widerstände und einen größeren Kondensator nehmen, oder einen CMOS-Timer.',
    source: 'TI SLFS023, Anmerkung zum größten RA + RB: (V/6) durch den größten Schwellenstrom',
  },
  'pitch-spread': {
    reason: (f) =>
      `Ungestimmte Platinen können allein durch die Toleranzen von ${cents(f.downCents)} unter bis ${cents(f.upCents)} über dieser Tonhöhe liegen.`,
    remedy: () =>
      'Jede Platine mit ihrem Trimmpoti stimmen, oder Kondensatoren mit ± 5 % oder ± 2 % bestellen.',
    source: 'ungünstigster Fall von Kondensator, Widerständen (± 1 %), Trimmpoti und Timer',
  },
  'pitch-out-of-reach': {
    reason: (f) =>
      `Auf einer Platine mit ungünstigen Teilen liegt diese Tonhöhe jenseits des ${f.end === 'top' ? 'hohen' : 'tiefen'} Endes des Trimmpotis: ${formatShare(f.share, 1)} von RB fehlen.`,
    remedy: (f) =>
      f.end === 'top'
        ? 'Einen kleineren festen RB nehmen, oder einen kleineren Kondensator mit höher gedrehtem Trimmpoti.'
        : 'Ein größeres Trimmpoti nehmen, oder einen größeren Kondensator mit tiefer gedrehtem Trimmpoti.',
    source: 'ungünstigster Fall der Toleranzen von Kondensator und Trimmpoti',
  },
  'drifting-ceramic': {
    reason: (f) =>
      `Diese Art Keramik verschiebt die Tonhöhe über ihren Temperaturbereich um bis zu ${cents(f.downCents)} nach unten und ${cents(f.upCents)} nach oben, und sie altert obendrein.`,
    remedy: () => 'Polyesterfolie oder C0G für den Zeitkondensator nehmen.',
    source: 'Buchstabencodes nach EIA RS-198',
  },
  'polarised-timing': {
    reason: (f) =>
      `${formatQuantity(f.farads, 'F', 3)} ist ein Elko: Leckstrom und Toleranz verschieben die Tonhöhe, und falsch herum kann er platzen.`,
    remedy: () => 'Einen Folienkondensator von 10 bis 220 nF mit größeren Widerständen nehmen.',
    source: 'Nichicon MA: ± 20 %, Leckstrom 3 µA oder mehr; Rubycon-FAQ zur Polung',
  },
  'coarse-trimmer': {
    reason: (f) =>
      `Eine Hand stellt dieses Trimmpoti nicht genauer als etwa ${cents(f.errorCents)}; 1 % des Wegs sind ${cents(f.centsPerPercent)}.`,
    remedy: () =>
      'Einen größeren festen RB mit einem kleineren Trimmpoti nehmen, oder eines mit 25 Umdrehungen.',
    source: 'Einstellbarkeit im Datenblatt des Trimmpotis; 5 Cent sind gängige Praxis',
  },
  'pitch-moves-with-battery': {
    reason: (f) =>
      `Von ${volts(f.fromVolts)} bis ${volts(f.toVolts)} wandert die Tonhöhe um ${formatFixed(f.cents, 1).replace('-', '−')} Cent, und mit der Drift des Chips um bis zu ${cents(f.driftCents)} mehr.`,
    remedy: () =>
      'Bei halb leerer Batterie nachstimmen, einen größeren RA nehmen, oder eine geregelte Versorgung von 5 V.',
    source: 'gerechnet aus dem Entladestift; Drift je Volt im Datenblatt des Timers',
  },
  'above-formula': {
    reason: (f) =>
      `${hertz(f.hertz)} liegt über ${hertz(f.mostHertz)}, wo die Zeitformel nicht mehr zugesagt ist: Verzögerungen zählen.`,
    remedy: () => 'Einen größeren Kondensator oder einen größeren festen RB nehmen.',
    source: 'TI SLFS078C, 6.3.2',
  },
  'outside-hearing': {
    reason: (f) =>
      `${hertz(f.hertz)} ist ${f.hertz < 20 ? 'zu tief, um als Ton gehört zu werden' : 'zu hoch für menschliche Ohren'}.`,
    remedy: (f) =>
      f.hertz < 20
        ? 'Einen kleineren Kondensator nehmen.'
        : 'Einen größeren Kondensator oder einen größeren RB nehmen.',
    source: 'Gehör von 20 Hz bis 20 kHz; gängige Praxis',
  },
  'voices-lock': {
    reason: (f) =>
      `Die Stimmen liegen ${cents(f.apartCents)} neben ${f.upper}:${f.lower}. Ein gemeinsamer Einbruch von ${volts(f.dipVolts)} an jeder Flanke zieht sie innerhalb von etwa ${cents(f.lockCents)} zusammen (erste Näherung).`,
    remedy: () =>
      'Sie weiter auseinander stimmen, jeden Chip mit 100 nF und 100 µF stützen, oder CMOS-Timer nehmen.',
    source: 'erste Näherung: der obere Pegel verschiebt sich um zwei Drittel des Einbruchs',
  },
  'outputs-joined': {
    reason: (f) =>
      `Die Ausgänge sind direkt verbunden: Solange einer hoch und der andere tief ist, fließen ${amperes(f.amperes)} zwischen ihnen (zulässig ${amperes(f.ratedAmperes)}), und die zwei Töne werden ein Brei.`,
    remedy: () => 'Von jedem Ausgang einen Mischwiderstand einbauen, 10 bis 47 kΩ.',
    source: 'gerechnet aus den Ausgangspegeln im Datenblatt des Timers',
  },
  'output-overloaded': {
    reason: (f) =>
      `Ein Ausgang muss ${amperes(f.amperes)} geben oder nehmen; für diesen Timer sind ${amperes(f.ratedAmperes)} zulässig.`,
    remedy: () => 'Größere Mischwiderstände einbauen, oder eine hochohmigere Last.',
    source: 'Ausgangsstrom im Datenblatt des Timers',
  },
  'too-loud-line': {
    reason: (f) =>
      `${volts(f.peakToPeakVolts)} von Spitze zu Spitze an der Buchse; ein Line-Eingang verträgt etwa ${volts(f.mostVolts)}.`,
    remedy: () => 'Größere Mischwiderstände nehmen, oder einen kleineren Widerstand vom Mischpunkt nach 0 V.',
    source: 'gängige Praxis für Line-Eingänge',
  },
  'too-loud-headphones': {
    reason: (f) =>
      `${volts(f.rmsVolts)} effektiv in Kopfhörer sind ${watts(f.watts)}, etwa ${formatFixed(f.decibels, 0)} dB, wenn sie ${f.perMilliwatt} dB aus 1 mW machen. Abspielgeräte bleiben bei ${volts(f.mostVolts)}.`,
    remedy: () =>
      'Mindestens 1 kΩ, besser 4,7 kΩ oder mehr, in Reihe einbauen, und einen Lautstärkeregler. Leise anfangen.',
    source: 'EN 50332: 150 mV am Ausgang eines Abspielgeräts (aus dem Gedächtnis)',
  },
  'thin-sound': {
    reason: (f) =>
      `Die Grenzfrequenz des Koppelkondensators ist ${hertz(f.cornerHertz)}, zu nahe an der tiefsten Stimme von ${hertz(f.lowestHertz)}: Der Klang ist dünn.`,
    remedy: (f) => `Zum Koppeln mehr als ${formatQuantity(f.farads, 'F', 2)} nehmen.`,
    source: 'eine Grenzfrequenz bei der halben Tonhöhe nimmt 1 dB; gängige Praxis',
  },
  'dc-at-jack': {
    reason: (f) =>
      `Ohne Koppelkondensator stehen ${volts(f.volts)} Gleichspannung an der Buchse: Knackser, und ein Kopfhörer oder Eingang, der leiden kann.`,
    remedy: () => 'Einen Koppelkondensator einbauen, 1 µF Folie für einen Line-Eingang.',
    source: 'gerechnet; gängige Praxis',
  },
  'coupling-polarity': {
    reason: (f) =>
      `Der Koppelkondensator hat eine Polung und hält ${volts(f.volts)} Gleichspannung: Sein Plusbein gehört auf die Seite der Timer.`,
    remedy: (f) => `So herum einbauen, für ${volts(f.ratingVolts)} oder mehr, oder 1 µF Folie nehmen.`,
    source: 'Rubycon und Elna zur Polung; das Doppelte der Versorgung ist gängige Praxis',
  },
  thump: {
    reason: (f) =>
      `Jedes Einsetzen und Aufhören macht einen Sprung von ${volts(f.stepVolts)}, der in ${seconds(f.seconds)} abklingt: ein Plopp.`,
    remedy: () => 'Einen kleineren Koppelkondensator nehmen; 1 µF an 10 kΩ genügt für tiefe Stimmen.',
    source: 'gerechnet; 50 ms sind gängige Praxis',
  },
  'no-decoupling': {
    reason: (f) =>
      `Neben den Chips steht kein Kondensator: An jeder Flanke drückt die Stromspitze des Timers die Schiene um etwa ${volts(f.dipVolts)}, und die Stimmen stören einander.`,
    remedy: () =>
      '100 nF und 100 µF über die Versorgungsstifte des Timers legen, und 100 nF an den Komparator.',
    source: 'EDN Asia, „The NE555 current spike“: 200 bis 300 mA durch den Innenwiderstand der Quelle',
  },
  'supply-below-range': {
    reason: (f) =>
      `${volts(f.railVolts)} an der Schiene liegen unter den ${volts(f.leastVolts)}, die der ${f.part === 'timer' ? 'Timer' : 'Komparator'} braucht: Er läuft vielleicht nicht an.`,
    remedy: (f) =>
      f.part === 'timer'
        ? 'Einen CMOS-Timer nehmen, oder eine Versorgung mit mehr Volt.'
        : 'Eine Versorgung mit mehr Volt nehmen.',
    source: 'Datenblatt des Chips',
  },
  'supply-above-range': {
    reason: (f) =>
      `${volts(f.railVolts)} an der Schiene liegen über den ${volts(f.mostVolts)}, die der ${f.part === 'timer' ? 'Timer' : 'Komparator'} verträgt: Er kann zerstört werden.`,
    remedy: (f) => `Eine Versorgung unter ${volts(f.mostVolts)} nehmen.`,
    source: 'Datenblatt des Chips',
  },
  'battery-sag': {
    reason: (f) =>
      `${amperes(f.amperes)} durch die ${ohms(f.sourceOhms)} der Quelle nehmen der Schiene ${volts(f.sagVolts)}.`,
    remedy: () =>
      'Die Batterie unter Last prüfen (einen Augenblick 470 Ω darüber), eine frische nehmen, größere RA und Pull-ups, oder CMOS-Timer.',
    source: 'gerechnet; 5 % der Versorgung sind gängige Praxis',
  },
  'battery-hours': {
    reason: (f) =>
      `Bei ${amperes(f.amperes)} im hungrigsten Zustand hält die Batterie etwa ${formatFixed(f.hours, 0)} Stunden.`,
    remedy: () => 'Für eine Ausstellung ein 5-V-Netzteil nehmen, größere RA und Pull-ups, oder CMOS-Timer.',
    source: 'Nennladung des Herstellers; ein Tag und eine Nacht sind gängige Praxis',
  },
  'battery-unused': {
    reason: (f) =>
      `Die Chips brauchen ${volts(f.chipVolts)}, leer ist die Batterie aber erst bei ${volts(f.emptyVolts)}: Ihr letzter Teil wird nie genutzt.`,
    remedy: () => 'Einen CMOS-Timer nehmen, oder eine Batterie mit mehr Zellen.',
    source: 'kleinste Versorgung im Datenblatt des Timers',
  },
  'no-diode': {
    reason: (f) =>
      `Keine Diode schützt vor einer verpolten Batterie: ${volts(f.volts)} falsch herum zerstören die Chips in weniger als einer Sekunde.`,
    remedy: () => 'Eine Schottky-Diode in Reihe mit der Versorgung einbauen; sie nimmt etwa 0,3 V.',
    source: 'Berichte von verbrannten Timern; gängige Praxis',
  },
};
