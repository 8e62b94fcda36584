import { describe, expect, it } from 'vitest';
import { bedTemplate, tilesOf } from '../../src/sheet/bed-template.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { layoutOnBed } from '../../src/setup/place.ts';
import { aJob, placed } from '../jig/a-job.ts';

const job = aJob({ made: 'on-bed-pins' });
const answer = stopsOf(job, placed(job));
const stops = answer.kind === 'made' ? answer.parts : [];

describe('the template of the bed', () => {
  it('shows every place of stops and blank on some sheet', () => {
    const tiles = tilesOf(job, stops, 10);
    expect(stops.length).toBeGreaterThan(0);
    const places = [...stops.flatMap(({ body }) => body.outline), { x: 280, y: 180 }].map((p) =>
      layoutOnBed(job, p),
    );
    for (const { x, y } of places)
      expect(
        tiles.some((t) => x > t.lowX && x < t.lowX + 180 && y > t.lowY && y < t.lowY + 240),
      ).toBe(true);
    // 280 and a stop with 10 round it, less 10, over 170: two sheets; 180 and a stop over 230: one.
    expect(tiles.map(({ name }) => name)).toEqual(['A1', 'B1']);
    expect(tiles[1]!.lowX - tiles[0]!.lowX).toBe(170);
  });

  it('draws each pin and screw at its place on the bed, in millimetres', () => {
    const page = bedTemplate(job, stops, 10, '0');
    for (const { onBed } of stops.flatMap(({ pins }) => pins))
      expect(page).toContain(
        `<circle cx="${Number(onBed.x.toFixed(2))}" cy="${Number((-onBed.y).toFixed(2))}" r="3"`,
      );
    expect(page).toContain('width="180mm" height="254mm" viewBox="0 0 180 254"');
    expect(page.match(/class="bar" d="M0 9H100/g)).toHaveLength(2);
  });

  it('lets no name out of its place', () => {
    const page = bedTemplate({ ...job, name: '</text><script>x</script>' }, stops, 10, '0');
    expect(page).not.toContain('<script>');
  });
});
