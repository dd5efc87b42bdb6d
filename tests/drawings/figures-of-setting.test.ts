import { describe, expect, it } from 'vitest';
import { cells, draw } from './drawn.ts';

// Every figure below is worked out by hand from the inputs beside it.

describe('setting up', () => {
  const stand = {
    pivotHeight: '1.95 in',
    tipHeight: '2 in',
    rollerRadius: '.3 in',
    netLift: '.6 in',
    pivotToTip: '1.5 in',
    shims: ['.06 in'],
  };

  it('a stand: roller axis 2.300, pivot .350 below it, .300 wanted, raised .050', () => {
    const drawing = draw('stand-height', stand);
    expect(cells(drawing).map(([, figure]) => figure)).toEqual(['.350', '.300', '.050', '.060', '.290']);
    expect(drawing.svg).toContain('>raise the stand .050 in</text>');
    expect(draw('stand-height', stand, 'metric').svg).toContain('>raise the stand 1.27 mm</text>');
  });

  it('a stand is to scale: the two pivots as .350 to .300 below the roller', () => {
    const { svg } = draw('stand-height', stand);
    const [axis = 0, ...pivots] = Array.from(svg.matchAll(/<circle[^>]* cy="([\d.]+)"/g), ([, y]) =>
      Number(y),
    );
    expect(((pivots[0] ?? 0) - axis) / ((pivots[1] ?? 0) - axis)).toBeCloseTo(0.35 / 0.3, 2);
  });

  it('a stand that is too high is lowered, one that is right is left', () => {
    expect(draw('stand-height', { ...stand, pivotHeight: '2.1 in' }).desc).toContain(
      'lower the stand .100 in',
    );
    expect(draw('stand-height', { ...stand, pivotHeight: '2 in' }).desc).toContain('the height is right');
    // A pivot .100 above the roller's axis.
    expect(draw('stand-height', { ...stand, pivotHeight: '2.4 in' }).desc).toContain('.100 in above');
  });

  const nut = { thread: '7/16-20', mount: 'stud-nut', ratio: 1.5 };

  it('an adjuster says which way, how far, and in flats: .0313 of .125 a turn is a quarter', () => {
    const lash = { ...nut, lifter: 'solid', lashFound: '.010 in', lashWanted: '.04125 in' };
    const drawing = draw('adjuster', lash);
    expect(drawing.svg).toContain('>loosen .25 turn: 90°, 1.5 flats</text>');
    expect(drawing.caption).toContain('loosening goes the other way');
    const preload = draw('adjuster', { ...nut, lifter: 'hydraulic', preloadWanted: '.125 in' });
    expect(preload.svg).toContain('>tighten 1.5 turns: 540°, 9 flats</text>');
    expect(preload.caption).toMatch(/^Tightening/);
    const none = { ...nut, lifter: 'solid', lashFound: '.010 in', lashWanted: '.010 in' };
    expect(draw('adjuster', none).svg).toContain('>nothing to turn</text>');
  });

  it('a sixth of a turn is one flat', () => {
    // .125/6 in of preload by half the lever: pitch × (1 + 1/1.5) = .083333 a turn, a sixth of it .0138889.
    const drawing = draw('adjuster', { ...nut, lifter: 'hydraulic', preloadWanted: '.0138889 in' });
    expect(drawing.svg).toContain('>tighten .167 turn: 60°, 1 flat</text>');
  });

  it('a lifter’s preload is drawn as the adjuster that presses it: .5 turn, .0417 down', () => {
    const drawing = draw('lifter-preload', { ...nut, turns: 0.5 });
    expect(drawing.svg).toContain('>tighten .5 turn: 180°, 3 flats</text>');
    expect(drawing.svg).toContain('>plunger down .0417 in</text>');
  });
});
