import '@fontsource-variable/archivo/wdth.css';
import './styles/theme.css';
import './styles/window.css';
import './styles/widgets.css';
import './styles/panels.css';
import './styles/straightView.css';
import './styles/byHand.css';
import './styles/adapters.css';
import './styles/parts.css';
import './styles/rod.css';
import './styles/section.css';
import './styles/papers.css';
import './styles/findings.css';
import './styles/newBay.css';
import './styles/recent.css';
import './styles/bench.css';
import './styles/lengths.css';
import './styles/gloves.css';
import { createRoot } from 'react-dom/client';
import { invariant } from '../../shared/base/invariant.ts';
import { desktop } from '../desktop/client.ts';
import { paperFonts } from '../desktop/paperFonts.ts';
import { createBench } from '../state/bench.ts';
import { windowJobHost } from '../workers/jobHost.ts';
import { awaitBay } from './BayPlace.tsx';
import { BenchWindow } from './BenchWindow.tsx';
import { keepChoices, rememberedChoices } from './choices.ts';
import { holdUnsaved } from './holdUnsaved.ts';
import { listenToMenu } from './menu.ts';

const place = document.getElementById('window');
invariant(place !== null, 'main: the page has no #window');

const shell = desktop();
const bench = createBench(
  { jobs: windowJobHost(), desktop: shell, paperFonts, today: () => new Date().toISOString().slice(0, 10) },
  rememberedChoices(),
);
keepChoices(bench.session);
bench.document.subscribe(({ open }) => {
  document.title = open === null ? 'Hosewright' : `${open.history.present.name} – Hosewright`;
});
listenToMenu(shell, bench);
holdUnsaved(window, bench);
awaitBay();
void bench.openGiven();
createRoot(place).render(<BenchWindow bench={bench} />);
