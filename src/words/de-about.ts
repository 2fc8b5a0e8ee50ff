/** What the page says about itself, in German. */
import { formatNumber } from '../quantity/format.ts';
import type { AboutWords } from './en-about.ts';

export const germanAbout: AboutWords = {
  heading: 'Über Lampnote',
  version: (version) => `Fassung ${version}`,
  what: 'Für Menschen, die zweistimmige Lichtinstrumente entwerfen, von anderen bauen lassen und einer Klasse zeigen, wie sie arbeiten: Tonhöhen hören, bevor die Kondensatoren bestellt sind, die Schwelle für einen Raum im Voraus einstellen, zeigen, warum ein Schatten einen Ton anhält.',
  network: {
    heading: 'Was diese Seite verlässt',
    lines: [
      'Nichts. Die Seite holt ihre eigenen Dateien dort, wo sie ausgeliefert wird, und fragt sonst keine Adresse nach irgendetwas: kein Konto, kein Hochladen, kein Zählen von Besuchen.',
      'Eine Inhaltsregel in der Seite lässt den Browser nichts von einer anderen Adresse laden und gar keine Datenverbindung öffnen.',
      'Bilder der Kamera und Ton des Mikrofons werden in dieser Seite zu Zahlen. Sie werden weder gespeichert noch gesendet, und beides endet, wenn der Ort verlassen wird.',
      'Ein Link trägt den ganzen Entwurf hinter seinem „#“, auch Preise und Protokoll; der auf den Blättern für Bausätze lässt sie weg. Diesen Teil senden Browser nicht an den Server.',
    ],
  },
  kept: {
    heading: 'Was aufbewahrt wird, und wo',
    heads: ['was', 'wo', 'wie lange'],
    rows: [
      [
        'der Entwurf mit Schublade, Merkliste, Raummessungen, Werkstatt und Bausatz-Protokoll',
        'in diesem Browser, unter „lampnote.design“',
        'bis er geändert oder vergessen wird',
      ],
      [
        'beiseitegelegte Entwürfe: der eines anderen Tabs, einer, der sich nicht lesen ließ, die letzten drei, an deren Stelle ein anderer geöffnet wurde',
        'in diesem Browser, unter „lampnote.aside.…“; welcher davon dieser Tab ist: im Tab, unter „lampnote.own“',
        'bis sie geöffnet, nicht mehr behalten oder vergessen werden',
      ],
      [
        'Aussehen, Sprache, Lautstärke, Einstellungen für Klasse und Ausstellung',
        'in diesem Browser, unter „lampnote.session“',
        'bis sie geändert oder vergessen werden',
      ],
      [
        'frühere Schritte des Entwurfs, zum Zurücknehmen',
        'in der offenen Seite',
        'bis die Seite verlassen oder neu geladen wird',
      ],
      [
        'mitgeschriebenes Licht, geöffnete Aufzeichnungen, Messwerte der Fehlersuche',
        'in der offenen Seite',
        'bis die Seite verlassen oder neu geladen wird',
      ],
      [
        'wie weit jede Lektion kam, Vermutungen und gezählte Hände',
        'im Tab, unter „lampnote.sitting“',
        'bis der Tab geschlossen oder alles vergessen wird',
      ],
      ['gespeicherte Dateien, kopierte Links', 'dort, wo sie abgelegt werden', 'so lange sie dort liegen'],
    ],
    shared:
      'Am Fuß der Seite nimmt „Alles auf diesem Gerät vergessen“ alles weg, was der Browser behält. Wer diesen Browser unter demselben Konto benutzt, kann lesen, was er aufbewahrt. Von einem Datenträger geöffnet, teilt die Seite ihren Speicher mit anderen so geöffneten Seiten.',
  },
  trust: {
    heading: 'Wie weit darauf Verlass ist',
    lines: [
      'Die Zeiten sind für die genannte Schaltung genau. Gebaute Bausätze weichen ab: Ein Kondensator mit 10 % verschiebt eine Tonhöhe um mehr als einen Halbton.',
      'Die Werte der Bauteile sind die typischen der Hersteller bei 25 °C. Fotowiderstände einer Sorte unterscheiden sich um den Faktor 2 bis 3; kommt es darauf an, hilft ein gemessener Widerstand bei 10 lx.',
      'Ein Anteil in Prozent ist eine Zählung von Ziehungen mit fester Startzahl. Wie Bauteile in ihrer Toleranz liegen, steht daneben; echte liegen gutmütiger oder stammen aus einer schiefen Charge.',
      'Berechnetes Tageslicht stimmt zu jedem Zeitpunkt auf den Faktor zwei nach oben und unten. Direkte Sonne auf einem Sensor ist nicht enthalten. Werte nach Art des Raums sind typische.',
      'Fehler einer Platine sind für den Entwurf berechnet. Was ein heißes oder halb totes Bauteil wirklich tut, kann anders sein.',
      'Der gemeinsame Einbruch der Versorgung ist erster Ordnung: Er beendet die hohe Phase einer Stimme und verschiebt weder Kondensator noch Komparator.',
      'Nicht im Ton: die Reaktionszeit des Komparators (etwa 1,3 µs), die Temperatur und das Nachgeben der Versorgung.',
      'Die Webcam liefert nur relatives Licht. Mit eingetipptem Wert und fester Belichtung sind ± 20 bis 30 % zu erwarten.',
      'Wie laut ein Lautsprecher ist, lässt sich hier nicht wissen: Die Seite spricht von Dezibel unter Vollaussteuerung, nie von Schalldruck.',
      'Örtliche Vorschriften und zugelassene Fachleute gehen vor.',
    ],
  },
  sources: {
    heading: 'Woher die Zahlen stammen',
    intro: (figures) =>
      `Das Modell wird an ${formatNumber(figures, 4)} Zeilen mit Zahlen gemessen, veröffentlicht oder aus einem veröffentlichten Gesetz berechnet; jede nennt ihre Quelle und wie weit das Modell abweichen darf. Nach Thema, die Quellen in ihrer Sprache:`,
    rest: 'Warnungen, Vorsichtshinweise und typische Räume nennen ihre Quellen dort, wo sie stehen. Was übliche Praxis ist oder aus dem Gedächtnis stammt, ist so bezeichnet.',
    topics: {
      astable: 'Zeiten der beiden Stimmen',
      camera: 'Licht aus dem Kamerabild',
      cell: 'Fotowiderstände in Ruhe',
      comparator: 'Komparatoren und Schwellen',
      daylight: 'Sonne und Himmel',
      drift: 'Toleranz und Drift',
      hearing: 'Gehör und Pegel',
      lamp: 'Welligkeit von Lampen',
      light: 'Licht, Schatten und Abstand',
      'moving-cell': 'Fotowiderstände in bewegtem Licht',
      output: 'Ausgang',
      parts: 'Trimmpotis und Aufdrucke',
      pitch: 'Noten und Intervalle',
      power: 'Versorgung und Batterien',
      reset: 'Reset und erste Periode',
      spectrum: 'Obertöne',
    },
    topic: (name, figures) => `${name} (${formatNumber(figures, 4)})`,
  },
  licences: {
    heading: 'Lizenzen',
    own: 'Lampnote darf frei benutzt, verändert und weitergegeben werden, unter der MIT-Lizenz.',
    others:
      'Es ist mit der Arbeit anderer gebaut, jede unter ihrer eigenen Lizenz; die Schriften stehen unter der SIL Open Font License. Alle Texte stehen hier, auf Englisch:',
    show: 'Lizenzen, und wessen Arbeit in dieser Seite steckt',
    file: 'Dasselbe als Textdatei',
  },
};
