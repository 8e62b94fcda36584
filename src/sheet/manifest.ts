import type { Html } from './html.ts';
import { markup } from './html.ts';
import { PAGE_STYLE } from './page-style.ts';

/** One thing that was built: what it is for, how it looks, the files it is in. */
export interface ManifestEntry {
  readonly name: string;
  readonly count: number;
  readonly purpose: string;
  readonly notes: readonly string[];
  readonly picture: Html | null;
  /** Plain file names in the same folder. */
  readonly files: readonly string[];
}

export interface ManifestGroup {
  readonly title: string;
  readonly entries: readonly ManifestEntry[];
}

export interface ManifestInput {
  readonly jobName: string;
  readonly groups: readonly ManifestGroup[];
  /** What is wanted and was not made, and why. */
  readonly missing: readonly string[];
  readonly version: string;
}

/** The page that shows everything a build made, with a picture of each; the same bytes every time. */
export function manifest({ jobName, groups, missing, version }: ManifestInput): string {
  const page = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>What was built: ${jobName}</title>
<style>${PAGE_STYLE}${MANIFEST_STYLE}</style>
</head>
<body>
<main>
<header><p class="kind">What was built</p><h1>${jobName}</h1></header>
${missing.length === 0 ? markup`` : markup`<section class="cautions"><h2>Not made</h2><ul>${missing.map((words) => markup`<li>${words}</li>`)}</ul></section>`}
<section class="cautions"><h2>Cautions first</h2><ul>
<li><b>The makers of machine, cutters and printer, your local rules and licensed practice come first.</b></li>
<li><b>Every program:</b> read its first lines, set the zero they name, run its air cut. The cutter stops over a witness place: if it stands elsewhere, do not go on.</li>
<li><b>Strengths and forces are estimates.</b> Try a printed clamp by hand before a cutter turns near it; wear glasses.</li>
</ul></section>
${groups.filter(({ entries }) => entries.length > 0).map(groupSection)}
<footer><p>Made by Flipwright ${version}. Lengths of files are millimetres; programs say their own units.</p></footer>
</main>
</body>
</html>
`;
  return page.html;
}

const MANIFEST_STYLE: Html = {
  html: `
.made { display: grid; grid-template-columns: 70mm 1fr; gap: 6mm; margin-bottom: 6mm; break-inside: avoid; }
.made h3 { margin-top: 0; }
.made svg { width: 70mm; max-height: 90mm; }
.files { font-size: 10pt; }
`,
};

const groupSection = ({ title, entries }: ManifestGroup): Html => markup`<section>
<h2>${title}</h2>
${entries.map(entrySection)}</section>`;

function entrySection({ name, count, purpose, notes, picture, files }: ManifestEntry): Html {
  return markup`<article class="made"><div>${picture ?? markup``}</div><div>
<h3>${name}${count === 1 ? '' : ` (make ${String(count)})`}</h3>
<p>${purpose}</p>
${notes.length === 0 ? markup`` : markup`<ul>${notes.map((note) => markup`<li>${note}</li>`)}</ul>`}
<p class="files">${files.map((file, i) => markup`${i === 0 ? '' : ', '}<a href="${file}">${file}</a>`)}</p>
</div></article>
`;
}
