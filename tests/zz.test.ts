import { it } from 'vitest';
import { writeFileSync, readFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { stopsOf } from '../src/jig/stops.ts';
import { stopFacets } from '../src/jig/stop-solid.ts';
import { checkMesh } from '../src/jig/mesh.ts';
import { stopPicture } from '../src/sheet/solid-picture.ts';
import { defaultJigSizes } from '../src/job/jig-sizes.ts';
import { fenceAlone } from '../src/jig/fence-job.ts';
import { readJob } from '../src/job/read.ts';
import { placingsOf } from '../src/setup/place.ts';
import { aJob } from './jig/a-job.ts';
const sb = { 'steel-buttons': defaultJigSizes('steel-buttons') };
const rd = (n: string) => { const r = readJob({name:'jigs/'+n, bytes: readFileSync('jigs/'+n)}, new Map([['shop.yaml', readFileSync('jigs/shop.yaml')],['shop-inch.yaml', readFileSync('jigs/shop-inch.yaml')]])); if(!r.ok) throw new Error(JSON.stringify(r.faults)); return r.value.job; };
const jobs: any[] = [['plain', aJob()], ['pins', { ...aJob({made:'on-bed-pins'}), jig: sb }], ['pins-two', { ...aJob({stops:{corner:{frontUp:'near-left',backUp:'near-right'}}}), jig: sb }], ['noins', { ...aJob({inserts:null}), jig: sb }],
 ['narrow', aJob({made:'milled-in-place', stops:{corner:{frontUp:'near-left',backUp:'near-right'}, band:{kind:'narrow',touchHeightMm:12}}})]];
for (const n of ['chime-box.yaml','enclosure-lid.yaml','clock-feet.yaml','compass-cover.yaml','instrument-plate.yaml','small-lids.yaml','gauge-lid.yaml']) { const j = rd(n); console.log(n, j.locating); const f = fenceAlone(j); if (f) { jobs.push(['fence-'+n, f]); jobs.push(['fencepin-'+n, {...f, jig: sb}]);} }
it("x", () => {
for (const [name, job] of jobs) {
  const a = stopsOf(job, placingsOf(name.startsWith('fence') ? rd(name.replace(/^fence(pin)?-/,'')) : job));
  if (a.kind === 'cannot') { console.log(name, a); continue; }
  a.parts.forEach((p, i) => { const m = checkMesh(stopFacets(p)); console.log(name, p.name, m, p.words.map(w=>w.words), p.lands.length, p.screws.length, p.pins.length);
    const f = `/tmp/jpic/stop-${name}-${i}`; writeFileSync(f+'.svg', stopPicture(p, 160));  });
}
}, 60000);
