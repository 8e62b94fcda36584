import { cornerAt, frontUpCorner } from '../../../setup/place.ts';
import type { Html } from '../../html.ts';
import { joined, markup } from '../../html.ts';
import { programWords, xyWords } from '../../place-words.ts';
import type { Dowel } from './dowel-places.ts';
import { holeOver } from './dowel-places.ts';
import type { DowelSet } from './dowel-set.ts';

interface Column {
  readonly title: string;
  readonly of: (dowel: Dowel) => string;
}

/** Where each dowel stands and each hole is, as the blank, the programs and the bed count. */
export function dowelTable(set: DowelSet): Html {
  const columns = columnsOf(set);
  const row = (dowel: Dowel): Html => markup`<tr>
<th scope="row"><b class="letter">${dowel.number}</b></th>${columns.map((column) => markup`<td>${stacked(column.of(dowel))}</td>`)}</tr>`;
  return markup`<table class="milling">
<thead>
<tr>
<th scope="col">No.</th>${columns.map(({ title }) => markup`<th scope="col">${title}</th>`)}</tr></thead>
<tbody>${set.dowels.map(row)}</tbody></table>`;
}

/** X over Y: side by side they would break anywhere. */
const stacked = (words: string): Html =>
  joined(words.split(', ').map((word, i) => markup`${i === 0 ? markup`` : markup`<br/>`}${word}`));

function columnsOf(set: DowelSet): readonly Column[] {
  const { job, dowels, holes, order } = set;
  const [first, second] = order;
  const inBlank: Column = {
    title: 'Hole in the blank, seen from the front, from its left and lower edge',
    of: ({ hole }) => xyWords(job, hole),
  };
  const onBed: Column = {
    title: 'On the bed, from its near-left corner',
    of: ({ onBed: at }) => xyWords(job, at),
  };
  const over = (which: 0 | 1): Column => ({
    title: `Over it in the ${which === 0 ? 'first' : 'second'} placing`,
    of: (dowel) => `hole ${holeOver(job, dowels, dowel, order[which])}`,
  });
  if (holes.drilled === 'separately') {
    const corner = cornerAt(job, frontUpCorner(job));
    const inBed: Column = {
      title: 'Dowel, from the zero of this drilling',
      of: ({ stands }) => xyWords(job, { x: stands.x - corner.x, y: stands.y - corner.y }),
    };
    return [inBlank, inBed, over(0), over(1), onBed];
  }
  return [
    inBlank,
    {
      title: 'From the zero of the first placing',
      of: ({ stands }) => programWords(job, first, stands),
    },
    {
      title: 'From the zero of the second placing',
      of: ({ stands }) => programWords(job, second, stands),
    },
    over(1),
    onBed,
  ];
}
