import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { faultText, readJob } from '../../src/job/read.ts';
import { onStops, readFromDisk } from './from-disk.ts';

const read = readFromDisk('tests/job/every-shape.yaml');
const job: Job | null = read.ok ? read.value.job : null;
const feature = (name: string) => job?.features.find((one) => one.name === name);

describe('the job of every shape', () => {
  it('has its sizes in mm, inches by 25.4', () => {
    expect(job?.blank).toMatchObject({ widthMm: 279.4, heightMm: 180, thickMm: 24 });
    expect(feature('plate')?.depthMm).toBe(6.35);
    expect(feature('groove')?.depthMm).toBe(9.525);
    expect(feature('wedge')?.depthMm).toBe(0.635);
    expect(job?.needs[1]).toMatchObject({ withinMm: 0.79375 });
  });

  it('cuts through as deep as the blank is thick', () => {
    expect(feature('hole')).toMatchObject({
      depthMm: 24,
      through: true,
      cut: 'drill',
      face: 'front',
    });
    expect(feature('foot')).toMatchObject({ depthMm: 1.5, through: false, face: 'back' });
  });

  it('keeps the cutters of the shop that the job does not replace', () => {
    expect(job?.shop.cutters.map(({ name }) => name).sort()).toEqual([
      'ball 4',
      'flat 6',
      'vee 90',
    ]);
    expect(feature('window')?.cutter).toMatchObject({ diameterMm: 4, kind: 'ball' });
  });

  it('turns counter-clockwise, in radians', () => {
    expect(feature('plate')?.turnedRad).toBeCloseTo(Math.PI / 6, 15);
    expect(feature('groove')?.turnedRad).toBe(-Math.PI / 2);
    expect(feature('hole')?.turnedRad).toBe(0);
  });

  it('gives inside corners the radius of the cutter and outside ones none, unless they have their own', () => {
    expect(feature('plate')?.shape).toMatchObject({ cornerRadiusMm: 3.01 });
    expect(feature('rim')?.shape).toMatchObject({ cornerRadiusMm: 0 });
  });

  it('goes round a polygon counter-clockwise, whichever way it was written, from its own origin', () => {
    expect(feature('wedge')?.shape).toEqual({
      kind: 'polygon',
      vertices: [
        { x: 30, y: 0 },
        { x: 0, y: 20 },
        { x: 0, y: 0 },
      ],
    });
    expect(feature('foot')).toMatchObject({
      at: { x: 0, y: 0 },
      shape: {
        vertices: [
          { x: 20, y: 20 },
          { x: 60, y: 20 },
          { x: 20, y: 60 },
        ],
      },
    });
  });

  it('has the outline of a drawing, its origin at the place it is given', () => {
    const badge = feature('badge');
    expect(badge?.at).toEqual({ x: 10, y: 10 });
    expect(badge?.shape.kind === 'outline' && badge.shape.path.length).toBe(5);
  });

  it('has the machine, the bed and what hangs above the tip', () => {
    expect(job?.shop.units).toBe('inch');
    expect(job?.shop.machine.aboveTip).toEqual({
      colletNut: { radiusMm: 9, fromMm: 28 },
      spindle: { radiusMm: 33, fromMm: 45 },
      dustShoe: { xMm: 110, yMm: 90, fromMm: 26 },
    });
    expect(job?.shop.bed).toMatchObject({
      spoilboard: { xMm: 600, yMm: 400, thickMm: 18 },
      inserts: {
        thread: 'M6',
        first: { x: 50, y: 50 },
        pitchMm: { x: 100, y: 75 },
        count: { x: 6, y: 5 },
      },
    });
  });

  it('has the stops and zeros as they are written', () => {
    expect(job).toMatchObject({ first: 'back', turn: 'about-x', goodEnoughShare: 0.95 });
    expect(onStops(job)).toMatchObject({
      corner: { frontUp: 'near-right', backUp: 'far-right' },
      fence: 'right',
      fenceTouch: { kind: 'arm', fromMm: 20, toMm: 160 },
      sideTouch: { kind: 'buttons', atMm: [90] },
      band: { kind: 'plain', heightMm: 10 },
      made: { kind: 'on-bed-pins' },
    });
    expect(job?.zero.frontUp).toMatchObject({
      xy: { kind: 'kept', how: 're-homed' },
      z: { on: 'bed' },
    });
    expect(job?.zero.backUp).toMatchObject({
      xy: { kind: 'middle', at: { x: 140, y: 90 }, tool: { name: 'plain pin' } },
      z: { on: 'top', at: { x: 140, y: 90 } },
    });
  });

  it('says what a gauge is good to, also where the shop leaves out the ±', () => {
    expect(job?.blank.thickSpread).toMatchObject({
      distribution: { kind: 'rectangular', low: -0.02, high: 0.02 },
      text: 'gauge caliper, ±0.02',
    });
    expect(job?.shop.machine.cutterLeanX.distribution).toEqual({
      kind: 'rectangular',
      low: -0.02 / 100,
      high: 0.02 / 100,
    });
  });
});

describe('a place in a file', () => {
  it('asks for parts of the jig, each size as written or as usual', () => {
    expect(Object.keys(job!.jig)).toEqual(['dowel-board', 'step-block', 'cam-clamp']);
    expect(job!.jig['cam-clamp']).toEqual({
      count: 3,
      radius: 25.4,
      throw: 2.5,
      handle: 90,
      thick: 15,
    });
    expect(job!.jig['dowel-board']).toMatchObject({ clearance: 0, pitch: 25 });
    expect(job!.jig['step-block']).toMatchObject({ rise: 3, high: null });
  });

  it('counts characters, not bytes', () => {
    // "é" is two bytes of UTF-8; the lone 0xb1 behind it is the eighth character of its line.
    const bytes = new Uint8Array([...new TextEncoder().encode('a: 1\nname: é'), 0xb1]);
    const broken = readJob({ name: 'x.yaml', bytes }, new Map());
    expect(broken.ok ? [] : broken.faults.map(faultText)).toEqual([
      'x.yaml:2:8: the ± is saved as one byte (Latin-1 or Windows-1252); save the file as UTF-8, or write +-',
    ]);
  });
});
