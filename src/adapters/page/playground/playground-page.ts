/**
 * The playground as one HTML file: editor, compiler, engine and a sample, complete in itself.
 */
import { DEFERENCE } from '../../../render/cautions.js';
import { escapeHtml } from '../../../render/escape-html.js';
import { pageHead, sourceHash } from '../view/page-head.js';
import type { Desk } from './desk.js';
import { PLAYGROUND_CSS } from './playground-css.js';
import { deskBlock } from './with-desk.js';

export interface PlaygroundParts {
  readonly desk: Desk;
  /** The bundled scripts of the page and of its worker. */
  readonly script: string;
  readonly worker: string;
}

/** The page. It fetches nothing, and its policy lets it fetch nothing; what an author types stays in it. */
export function playgroundPage({ desk, script, worker }: PlaygroundParts): string {
  // The editor makes its own style sheet while it runs, and draws its underlines as pictures of its own.
  const allows = [`script-src ${sourceHash(script)}`, 'worker-src blob:', "style-src 'unsafe-inline'", 'img-src data:'];
  return `${pageHead({ title: 'Duewright playground', allows, css: PLAYGROUND_CSS })}
<body>
<a class="skip" href="#due">To what is due</a>
<header class="top">
<h1>Duewright <span>playground</span></h1>
<p>${escapeHtml(DEFERENCE)} The sample machine is invented.</p>
<div class="own">
<button type="button" id="open-files">Open files</button>
<button type="button" id="new-schedule">New schedule</button>
<input type="file" id="own-files" multiple accept=".due,.jsonl" hidden>
<span id="open-said" role="status"></span>
</div>
</header>
<main>
<section class="text" aria-label="Text">
<div id="files" class="tabs"></div>
<div id="editor" role="tabpanel" aria-label="Editor"></div>
<section class="problem-list" aria-labelledby="problems-title">
<h2 id="problems-title">Problems <span id="problem-count" role="status"></span></h2>
<ul id="problems" tabindex="0" aria-labelledby="problems-title"></ul>
</section>
</section>
<section class="machine" aria-label="Machine">
<form id="suppose" class="suppose" aria-label="What is supposed">
<div class="slide"><label for="when">On</label><input type="range" id="when" step="1"><input type="date" id="when-date" aria-label="Date"></div>
<div class="slide"><label for="more">Hours</label><input type="range" id="more" min="0" max="500" step="0.5" value="0"><select id="meter" aria-label="Meter"></select></div>
<p class="slide-words"><output id="more-words" for="more"></output> <label class="choice"><input type="checkbox" id="keep-up"> keep up with the date at the present rate of use</label></p>
<details class="work"><summary>Work on that day</summary><label class="choice"><input type="checkbox" id="works" checked> work is intended</label><span id="work-choices"></span></details>
</form>
<div id="verdict" class="verdict" role="status"></div>
<div class="answer">
<div id="due" class="due" role="region" aria-label="What is due" tabindex="-1"></div>
<div class="look">
<div id="looks" class="tabs"></div>
<div id="detail" class="detail" role="tabpanel" tabindex="0"></div>
</div>
</div>
<p class="foot"><span id="speed"></span></p>
</section>
</main>
${deskBlock(desk)}
<script type="text/plain" id="worker">${worker}</script>
<script>${script}</script>
</body>
</html>
`;
}
