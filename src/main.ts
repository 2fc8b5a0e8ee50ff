/** The page, in order: what this device kept, the application behind the views, the one root element. */
import './views/theme/theme.css';
import { languageIn } from './app/address.ts';
import { Keeping } from './app/keeping.ts';
import { Lampnote } from './app/lampnote.ts';
import { fetchLateFiles } from './app/late-files.device.ts';
import { keptSession } from './app/storage.device.ts';
import { DEFAULT_DESIGN } from './design/defaults.ts';
import './views/lamp-note.ts';
import { words } from './words/en.ts';

const session = keptSession();
const keeping = new Keeping();
const app = new Lampnote(keeping.begin() ?? DEFAULT_DESIGN, session, keeping);
await app.speak(languageIn(location.hash) ?? session.language);

const root = document.querySelector('lamp-note');
if (root) root.app = app;
app.run();
fetchLateFiles();
void app.openLink(location.hash, words.labels.link);
window.addEventListener('pagehide', () => app.leave());
window.addEventListener('pageshow', ({ persisted }) => persisted && app.comeBack());
window.addEventListener('beforeunload', (event) => app.wouldLose && event.preventDefault());
