/** What is said of the keeping of the design in this browser, in German. */
import type { keepingWords } from './en-keeping.ts';
import type { Translated } from './spoken.ts';

export const germanKeeping: Translated<typeof keepingWords> = {
  refused:
    'Dieser Browser behält nicht, was hier entsteht (Speicher voll oder verboten). Alles arbeitet weiter; vor dem Schließen der Seite den Entwurf als Datei sichern.',
  save: 'Entwurf sichern',
  close: 'Diese Meldung schließen',

  elsewhere:
    'Ein anderer Tab hat den Entwurf geändert, den dieser Browser behält. Hier steht noch der eigene; bis zur Wahl bleiben beide erhalten.',
  theirs: 'Den des anderen Tabs nehmen',
  theirsStep: 'Entwurf des anderen Tabs nehmen',
  mine: 'Meinen behalten',

  aside: (name) =>
    `In diesem Browser liegt noch ein Entwurf beiseite: „${name}“, aus einem anderen Tab oder von vor dem Öffnen eines anderen.`,
  unread:
    'Der in diesem Browser behaltene Entwurf lässt sich nicht lesen, darum begann die Seite mit einem anderen. Das Behaltene liegt unverändert beiseite.',
  open: 'Öffnen',
  saveAside: 'Als Datei sichern',
  asideFile: 'beiseitegelegt',
  letGo: 'Nicht mehr behalten',

  forget: {
    told: 'Der Entwurf, die Einstellungen der Seite und die Sprache bleiben in diesem Browser und nirgends sonst.',
    press: 'Alles auf diesem Gerät vergessen …',
    asks: 'Den in diesem Browser behaltenen Entwurf, alles Beiseitegelegte und die Einstellungen der Seite vergessen? Was zu sehen ist, bleibt bis zum Schließen; gesicherte Dateien bleiben auch.',
    yes: 'Alles vergessen',
    no: 'Behalten',
    done: 'Vergessen: Dieser Browser behält nichts mehr von dieser Seite. Bei der nächsten Änderung behält er wieder.',
    failed:
      'Der Browser hat nicht alles gehen lassen. In seinen eigenen Einstellungen die Daten dieser Website suchen und dort entfernen.',
  },
};
