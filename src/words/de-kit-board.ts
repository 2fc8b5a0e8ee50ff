/** Words of the place Kit in German: the board plan, the build cards, and what a workshop of them takes. */
import { formatShare } from '../quantity/format.ts';
import { count, minutesText, timeText } from './de-kit-counts.ts';
import type { kitViewWords } from './en-kit.ts';
import type { Translated } from './spoken.ts';

const PART_HEADS = ['Teil', 'Wert', 'Löcher', 'Wie es sitzt'] as const;

export const kitBoard: Translated<Pick<typeof kitViewWords, 'board' | 'cards'>> = {
  board: {
    heading: {
      component: 'Platinenplan, Bestückungsseite',
      copper: 'Platinenplan, Kupferseite',
    },
    why: [
      'Ein Plan, aus der Verbindungsliste berechnet und aus seinen eigenen Löchern, Beinen, Drahtbrücken und Trennstellen zurückgelesen, bevor er gezeigt wird.',
      'Löcher zählen von der markierten Ecke aus. Leiterbahnen haben Buchstaben, ohne I und O; die Löcher darin haben Nummern.',
    ],
    whyCopper:
      'Die Kupferseite ist gespiegelt: Es ist die umgedrehte Platine, wie man sie beim Löten vor sich hat.',
    planning: 'Die Platine wird geplant …',
    replanning: 'Wird neu geplant …',
    sides: { component: 'Bestückungsseite', copper: 'Kupferseite' },
    side: 'Gesehen von der',
    only: 'Hervorheben',
    onlys: { all: 'alles gleich', cuts: 'Trennstellen', links: 'Drahtbrücken', parts: 'Teile' },
    options: 'Platine',
    size: 'Größe',
    fit: 'ein passend zugesägtes Stück',
    sizeName: (strips, holes) => `${strips} Leiterbahnen zu ${holes} Löchern`,
    resistors: 'Widerstände',
    lies: {
      'as they fit': 'liegend oder stehend, wie es passt',
      flat: 'alle liegend',
      upright: 'stehend, wo sie hinreichen',
    },
    longer: 'Länger nach weniger Drahtbrücken und weniger Platine suchen',
    free: 'dieses Loch frei halten',
    freeHint: 'Etwa C7: kein Bein, keine Trennstelle, nichts darüber. Dann die Eingabetaste drücken.',
    freeBad: (read) =>
      `Gelesen: „${read}“. Angenommen: Buchstabe einer Leiterbahn und Nummer eines Lochs, etwa C7, auf der Platine.`,
    kept: 'Frei gehalten:',
    giveBack: (name) => `${name} wieder verwenden`,
    step: (what) => `Platine: ${what}`,
    figure: (strips, holes, cuts, links, height, width) =>
      `${strips} Leiterbahnen zu ${holes} Löchern (${width} mal ${height}), ${count(cuts, 'Trennstelle', 'Trennstellen')}, ${count(links, 'Drahtbrücke', 'Drahtbrücken')}. Die aus diesem Plan zurückgelesenen Netze gleichen der Verbindungsliste. Zahlen neben Drahtbrücken sind ihre Länge in mm.`,
    pictureLabel: {
      component: 'Platine von der Bestückungsseite',
      copper: 'Platine von der Kupferseite, gespiegelt',
    },
    corner: 'markierte Ecke',
    joint: 'Lötstelle',
    jointText: (place, all, text) => `Lötstelle ${place} von ${all}: ${text}`,
    lead: (name, hole, net) => `${name} in ${hole}, Netz ${net}`,
    linkEnd: (id, hole, net) => `Drahtbrücke ${id} in ${hole}, Netz ${net}`,
    jointHint:
      'Pfeiltasten gehen die Lötstellen in der Reihenfolge des Lötens durch; Pos1 und Ende springen zur ersten und zur letzten.',
    cutHeads: ['Trennen bei', 'Wo'],
    linkHeads: ['Brücke', 'Von', 'Nach', 'Länge', 'Netz'],
    partHeads: PART_HEADS,
    widenHeads: ['Loch', 'Für', 'Aufbohren auf'],
    cutList: 'Trennstellen',
    linkList: 'Drahtbrücken',
    partList: 'Teile in ihren Löchern',
    widenList: 'Aufzubohrende Löcher',
    stances: {
      flat: 'liegt flach',
      upright: 'steht hochkant',
      standing: 'steht',
      chip: 'über seinen Trennstellen',
      edge: 'am Rand',
      pin: 'Stift',
    },
    standsOn: (hole) => `Körper über ${hole}`,
    plusAt: (hole) => `Plus in ${hole}`,
    bandAt: (hole) => `Ring zu ${hole} hin`,
    pin1At: (hole) => `Stift 1 in ${hole}, Kerbe zu Leiterbahn A hin`,
    wiperAt: (hole) => `Schleifer in ${hole}`,
    pair: 'Beide Seiten auf ein Blatt drucken, über die lange Kante gewendet: Die beiden Umrisse liegen aufeinander.',
    actual: 'In wahrer Größe (1 : 1)',
    larger: 'Größer, zum Lesen',
    mirroredNote: 'Gespiegelt: die Platine, wie sie liegt, wenn das Blatt über die lange Kante gewendet ist.',
  },

  cards: {
    heading: 'Aufbaukarten',
    why: [
      'Eine Karte für jeden Schritt, in einer Reihenfolge, die sich unterwegs prüfen lässt: Niedriges zuerst, Chips zuletzt.',
      'Was schon da ist, ist blass gezeichnet; was dieser Schritt hinzufügt, tritt hervor.',
    ],
    step: (place, title) => `${place}. ${title}`,
    of: (place, all) => `Schritt ${place} von ${all}`,
    back: 'Zurück',
    next: 'Fertig, nächster Schritt',
    again: 'Zurück zum ersten Schritt',
    choose: 'Schritt',
    minutes: (minutes) => `Etwa ${minutesText(Math.max(1, minutes))} beim ersten Mal.`,
    limit: (limit) =>
      `Das Netzteil auf höchstens ${limit} begrenzen oder ein Messgerät in seine Leitung schalten.`,
    stop: 'Halt: prüfen',
    partHeads: PART_HEADS,
    needs: 'Was dieser Schritt braucht',
    component: 'Von der Bestückungsseite',
    copper: 'Von der Kupferseite, gespiegelt',
    titles: {
      sort: 'Teile sortieren',
      cuts: 'Leiterbahnen trennen',
      links: 'Drahtbrücken einsetzen',
      flat: 'Liegende Widerstände',
      sockets: 'Fassungen',
      small: 'Stehende Widerstände und kleine Kondensatoren',
      trimmers: 'Trimmpotis',
      tall: 'Hohe Kondensatoren',
      pins: 'Messstifte',
      leads: 'Buchse, Sensoren, Versorgungsleitungen',
      'first power': 'Erstes Einschalten, ohne Chips',
      chips: 'Chips einsetzen',
      tune: 'Stimmen',
    },
    tells: {
      sort: 'Die Teile nach Wert auslegen, die Ringe jedes Widerstands lesen und messen, was zweifelhaft ist.',
      cuts: 'Die Platine mit der Kupferseite nach oben drehen, links und rechts vertauscht. Jede Trennstelle anzeichnen, einen 3-mm-Bohrer von Hand im Loch drehen, bis kein Kupfer mehr hinüberreicht, und den Staub abbürsten.',
      links: 'Blanker Draht, gerade und flach auf der Platine. Zuerst auf Länge biegen.',
      flat: 'Richtung egal. Bis auf die Platine drücken, die Beine etwas spreizen, löten, abkneifen.',
      sockets:
        'Kerbe wie gezeichnet. Zuerst zwei Ecken löten, nachsehen, ob die Fassung plan aufliegt, dann den Rest.',
      small:
        'Der Körper eines stehenden Widerstands sitzt über dem Loch mit dem Ring; sein anderes Bein wird herübergebogen.',
      trimmers: 'Das eingekreiste Bein ist der Schleifer. Die Beine ohne Kraft hineindrücken.',
      tall: 'Auf das Pluszeichen achten: Dort gehört das längere Bein hin, der Streifen von ihm weg.',
      pins: 'Einer an jeden Messpunkt; dort setzt das Messgerät an.',
      leads:
        'Zuerst die Löcher der Buchse aufbohren. Rot ist plus, schwarz ist minus. Isolierschlauch über die Beine der Sensoren.',
      'first power':
        'Die Chips bleiben noch draußen. Mit der Lupe nach Lötbrücken suchen, dann einschalten und messen.',
      chips:
        'Ausschalten. Kerbe und Stift 1 wie gezeichnet; gleichmäßig hineindrücken. Einschalten und sofort den Strom ablesen.',
      tune: 'Immer nur eine Stimme: ihr Tonhöhen-Trimmpoti bis zum Ton drehen, dann ihre Schwelle, bis sie gerade schaltet.',
    },
    solder: 'Auf der Kupferseite löten',
    checks: {
      apart: (holes) => `Mit dem Durchgangsprüfer: kein Piepton über irgendeine Trennstelle: ${holes}.`,
      joined: (holes) => `Über jede Drahtbrücke piept das Messgerät: ${holes}.`,
      ohms: (from, to, least, most) =>
        `Zwischen ${from} und ${to}: ${least} bis ${most}. Viel weniger ist ein Kurzschluss: nicht einschalten.`,
      volts: (hole, net, least, most) =>
        least === most ? `${hole} (${net}): ${least}` : `${hole} (${net}): ${least} bis ${most}`,
      against: 'Gegen TP0, in Volt:',
      current: (most) =>
        `Die Versorgung gibt höchstens ${most}. Mehr, oder etwas wird warm: Strom weg, dann nachsehen.`,
    },
    plan: {
      heading: 'Ein Workshop damit',
      step: (what) => `Workshop: ${what}`,
      helpers: 'Helfende',
      badJoint: 'schlechte Lötstellen',
      repair: 'Minuten, eine Platine zu reparieren',
      prepared: 'Vorher erledigt',
      joints: (joints) => `${count(joints, 'Lötstelle', 'Lötstellen')} auf einer Platine.`,
      right: (share) => `${formatShare(share)} der Platinen gehen auf Anhieb.`,
      each: (minutes) => `${timeText(minutes)} im Raum beim ersten Mal.`,
      before: (minutes) => `${timeText(minutes)} Arbeit vorher.`,
      mend: (minutes, perHelper) =>
        `${timeText(minutes)} Reparatur insgesamt${perHelper === null ? '' : `, ${timeText(perHelper)} je helfende Person`}.`,
      table: 'Minuten je Arbeitsgang',
      tableHint: 'Schätzungen aus einem Workshop, aus dem Gedächtnis: das eigene Protokoll eintragen.',
      rows: {
        perPart: 'ein Teil sortieren',
        perCut: 'eine Trennstelle',
        perLink: 'eine Drahtbrücke',
        perSocketPin: 'ein Pol einer Fassung',
        perJoint: 'Lötstelle eines kleinen Teils',
        perLeadJoint: 'Lötstelle von Trimmpoti oder Litze',
        perChip: 'ein Chip',
        firstPower: 'erstes Einschalten',
        tune: 'Stimmen',
      },
    },
    waiting: 'Die Karten werden aus dem Platinenplan gezeichnet, der gerade entsteht.',
    none: 'Es gibt keinen Platinenplan, aus dem Karten zu zeichnen wären. Warum, sagt das Blatt „Platinenplan“.',
  },
};
