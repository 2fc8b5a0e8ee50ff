/** The parts of the place that nobody needs in the first moment: loaded as soon as the rest stands. */
import '../plots/live-traces.ts';
import './board-panel.ts';
import './camera-panel.ts';
import './first-cycles.ts';
import './gate-parts.ts';
import './lamp-row.ts';
import './log-panel.ts';
import './scene-panel.ts';
import './take-panel.ts';
import './warnings-panel.ts';
