import { describe, expect, it } from 'vitest';
import { faultText } from '../../../src/job/fault.ts';
import { readBedHeights } from '../../../src/job/readings/bed-heights.ts';

const read = (text: string) =>
  readBedHeights({ name: 'bed.csv', bytes: new TextEncoder().encode(text) });
const pointsOf = (text: string) => {
  const result = read(text);
  if (!result.ok) throw new Error(result.faults.map(faultText).join('\n'));
  return result.value.map(({ at, heightMm }) => [at.x, at.y, heightMm]);
};
const faultsOf = (text: string): readonly string[] => {
  const result = read(text);
  return result.ok ? [] : result.faults.map(faultText);
};

describe('bed heights out of a table', () => {
  const wanted = [
    [0, 0, 0.02],
    [100, 0, -0.05],
    [0, 50, 0.1],
    [100, 50, 0.127],
  ];

  it.each([
    ['a list', 'x,y,height\n0,0,0.02\n100,0,-0.05\n0,50,.1\n100,50,5 thou\n'],
    [
      'other columns between, any order',
      'note,height,y,x\na,0.02,0,0\n,-0.05,0,100\n,0.1,50,0\n,0.127,50,100',
    ],
    [
      'semicolons, a mark and line ends of Windows',
      '\ufeffx;y;height\r\n0;0;0.02\r\n100;0;-0.05\r\n0;50;0.1\r\n100;50;0.127\r\n',
    ],
    [
      'tabs, quotes, remarks and empty lines',
      '# dial\n\nx\ty\t"height"\n0\t0\t"0.02"\n100\t0\t-0.05\n0\t50\t0.1\n\n100\t50\t0.127\n',
    ],
    ['a grid', 'y\\x,0,100\n0,0.02,-0.05\n50,0.1,0.127\n'],
  ])('reads %s', (_, text) => {
    const points = pointsOf(text);
    expect(points).toHaveLength(4);
    points.forEach((point, k) => {
      point.forEach((value, j) => {
        expect(value).toBeCloseTo(wanted[k]![j]!, 12);
      });
    });
  });

  it('leaves out the cells of a grid that were not read', () => {
    expect(pointsOf('y/x,0,100\n0,0.02,\n50,,0.1\n')).toEqual([
      [0, 0, 0.02],
      [100, 50, 0.1],
    ]);
  });

  it.each([
    [
      '',
      [
        'bed.csv:1:1: the file is empty; write x,y,height in the first line, and a reading a line below',
      ],
    ],
    ['x,y\n1,2\n', [/^bed\.csv:1:1: the first line has no height; write x,y,height/]],
    ['x,y,height\n1,2\n', [/^bed\.csv:2:1: the line has 2 cells and the first line 3; /]],
    [
      'x,y,height\n1,2,abc\n3,4,NaN\n',
      [/^bed\.csv:2:5: abc is not a length/, /^bed\.csv:3:5: NaN is not a length/],
    ],
    ['x;y;height\n1;2;0,02\n', ['bed.csv:2:5: 0,02 has a comma; write 0.02']],
    ['x,y,height\n1,2,45\n', [/^bed\.csv:2:5: height 45 is more than any bed is out by/]],
    ['x,y,height\n1,2,"0.1\n3,4,0.2\n', [/^bed\.csv:2:1: a double quote is not closed/]],
    ['x,y,height\n1,2,3 furlongs\n', [/^bed\.csv:2:5: 3 furlongs has the unit furlongs/]],
  ])('says what is wrong with %j, and where', (text, faults) => {
    const found = faultsOf(text);
    expect(found).toHaveLength(faults.length);
    faults.forEach((fault, k) => {
      if (typeof fault === 'string') expect(found[k]).toBe(fault);
      else expect(found[k]).toMatch(fault);
    });
  });
});
