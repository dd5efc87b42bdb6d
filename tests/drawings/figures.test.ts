import { describe, expect, it } from 'vitest';
import { dial } from '../../server/drawings/dial.ts';
import { rulerOf } from '../../server/drawings/drawing.ts';
import { cells, draw } from './drawn.ts';

const spring = {
  installedHeight: '1.9 in',
  seatLoad: '130 lbf',
  rate: '350 lbf/in',
  netLift: '.56 in',
  solidHeight: '1.15 in',
};

// Every figure below is worked out by hand from the inputs beside it.
/** The point of the big hand. */
const NEEDLE = /data-hand="needle"[^>]*><path class="draw-moving-solid" d="M([\d.]+) ([\d.]+)/;

describe('the figures on a drawing and in its table', () => {
  it('a spring: 1.900 less .560 is 1.340, and .190 is left over 1.150', () => {
    const drawing = draw('spring-load', spring);
    expect(cells(drawing)).toEqual([
      ['Installed', '1.900'],
      ['At full lift', '1.340'],
      ['Solid', '1.150'],
      ['Left before coil bind', '.190'],
    ]);
    for (const figure of ['1.900', '1.340', '.190']) expect(drawing.svg).toContain(`>${figure}</text>`);
  });

  it('the same in millimetres: 1.9 in is 48.26 mm, .19 in is 4.826 mm', () => {
    const drawing = draw('spring-load', spring, 'metric');
    expect(cells(drawing)[0]).toEqual(['Installed', '48.26']);
    expect(drawing.svg).toContain('>4.826</text>');
    expect(drawing.desc).toContain('48.26 mm');
  });

  it('a spring whose coils meet is drawn with its gap below zero', () => {
    const drawing = draw('spring-load', { ...spring, netLift: '.8 in' });
    expect(drawing.svg).toContain('>−.050</text>');
  });

  it('a spring is to scale: open height over installed height as 1.340 to 1.900', () => {
    const { svg } = draw('spring-load', spring);
    // Upright dimension lines: from the retainer's underside down to the seat.
    const [installed, open] = Array.from(
      svg.matchAll(/<path class="draw-dim" d="M[\d.]+ ([\d.]+)V([\d.]+)" marker-start/g),
      ([, from, to]) => Number(to) - Number(from),
    );
    expect((open ?? 0) / (installed ?? 1)).toBeCloseTo(1.34 / 1.9, 3);
  });

  it('a retainer: .650 closed, .560 of lift, .090 left', () => {
    const drawing = draw('retainer-to-seal', { closedDistance: '.65 in', netLift: '.56 in' });
    expect(cells(drawing)).toEqual([
      ['Closed', '.650'],
      ['Full lift', '.090'],
    ]);
  });

  it('a dial: 82 thousandths anticlockwise leave the hand at 64.8 degrees, over the printed 18', () => {
    const drawing = draw('dial-reading', {
      graduation: '.001 in',
      perTurn: '.1 in',
      turns: 4,
      needle: '.082 in',
      runs: 'anticlockwise',
    });
    expect(drawing.desc).toContain('4 turns and 82 past zero, .482 in in all');
    const tip = NEEDLE.exec(drawing.svg);
    const [x, y] = [Number(tip?.[1]) - 160, 136 - Number(tip?.[2])];
    expect((Math.atan2(x, y) * 180) / Math.PI).toBeCloseTo(64.8, 1);
  });

  it('a dial names the figure under its hand, which is what is left of the turn where it runs back', () => {
    const inputs = {
      graduation: { value: 0.001, unit: 'in' },
      perTurn: { value: 0.1, unit: 'in' },
      turns: 4,
      needle: { value: 0.082, unit: 'in' },
    };
    expect(draw('dial-reading', { ...inputs, runs: 'anticlockwise' }).desc).toContain('on the figure 18');
    expect(draw('dial-reading', { ...inputs, runs: 'clockwise' }).desc).toContain('on the figure 82');
    const onZero = { ...inputs, needle: { value: 0, unit: 'in' }, runs: 'anticlockwise' };
    expect(draw('dial-reading', onZero).desc).toContain('on the figure 0;');
  });

  it('the small hand goes back from where the plunger was pushed in to, and on where it goes in', () => {
    const given = { perTurn: 0.1, graduation: 0.001, turns: 4, needle: 0.082, startedAt: 6 };
    const drawnFor = { id: 'small', ruler: rulerOf('inch') };
    const at = ({ svg }: { readonly svg: string }) => /data-hand="small" data-at="([\d.-]+)"/.exec(svg)?.[1];
    // 6 − 4.82 = 1.18 turns, and 6 + 4.82 = 10.82, once round and .82: 36 degrees a turn.
    const out = dial({ ...given, runs: 'anticlockwise' }, drawnFor);
    expect(Number(at(out))).toBeCloseTo(1.18 * 36, 2);
    expect(out.desc).toContain('small hand from 6 to 1.2');
    expect(Number(at(dial({ ...given, runs: 'clockwise' }, drawnFor)))).toBeCloseTo(0.82 * 36, 2);
  });

  it('the small hand is geared to the big one: from zero it comes down from ten where that runs back', () => {
    const given = { perTurn: 0.1, graduation: 0.001, turns: 4, needle: 0.066 };
    const drawnFor = { id: 'geared', ruler: rulerOf('inch') };
    const at = ({ svg }: { readonly svg: string }) =>
      ((Number(/data-hand="small" data-at="([\d.-]+)"/.exec(svg)?.[1]) % 360) + 360) % 360;
    // 10 − 4.66 = 5.34 turns, 36 degrees a turn; its dial is printed clockwise, as the face is.
    const back = dial({ ...given, runs: 'anticlockwise' }, drawnFor);
    expect(at(back)).toBeCloseTo(5.34 * 36, 2);
    expect(back.desc).toContain('small hand back past 6');
    const on = dial({ ...given, runs: 'clockwise' }, drawnFor);
    expect(at(on)).toBeCloseTo(4.66 * 36, 2);
    expect(on.desc).toContain('small hand past 4');
  });

  it('the needle lies over the small dial and is one piece', () => {
    const given = { perTurn: 0.1, graduation: 0.001, turns: 5, needle: 0.05, runs: 'clockwise' } as const;
    const { svg } = dial(given, { id: 'over', ruler: rulerOf('inch') });
    expect(svg.indexOf('data-hand="needle"')).toBeGreaterThan(svg.indexOf('data-hand="small"'));
  });

  it('a dial that runs clockwise has its hand on the other side', () => {
    const inputs = {
      graduation: '.001 in',
      perTurn: '.1 in',
      turns: 5,
      needle: '.066 in',
      runs: 'clockwise',
    };
    const tip = NEEDLE.exec(draw('dial-reading', inputs).svg);
    const degrees = (Math.atan2(Number(tip?.[1]) - 160, 136 - Number(tip?.[2])) * 180) / Math.PI;
    // .066 of .100 is 237.6 degrees round.
    expect((degrees + 360) % 360).toBeCloseTo(237.6, 1);
  });

  it('cam timing: an opening after top dead centre is said as such', () => {
    const drawing = draw('cam-timing', {
      intake: { opens: '5 deg ATDC', closes: '35 deg ABDC' },
      exhaust: { opens: '40 deg BBDC', closes: '8 deg BTDC' },
    });
    // 180 − 5 + 35 = 210; 40 + 180 − 8 = 212; overlap −5 − 8 = −13.
    expect(cells(drawing)).toEqual([
      ['Intake', '5 ATDC', '35 ABDC', '210'],
      ['Exhaust', '40 BBDC', '8 BTDC', '212'],
    ]);
    expect(drawing.svg).toContain('overlap −13°');
  });

  it('centreline: readings of 60 and 145.5 peak at 102.75', () => {
    const drawing = draw('centreline', { before: '60 deg', after: '145.5 deg', card: '106 deg' });
    expect(cells(drawing)).toEqual([
      ['read 60', '60'],
      ['read 145.5', '145.5'],
      ['Peak', '102.75'],
      ['Card', '106'],
    ]);
  });

  it('an exhaust centreline from its events stands before the top', () => {
    const drawing = draw('centreline', { opens: '77 deg BBDC', closes: '29 deg ATDC', side: 'exhaust' });
    // (77 + 180 + 29)/2 − 29 = 114 before TDC.
    expect(cells(drawing).at(-1)).toEqual(['Peak', '−114']);
  });

  it('top dead centre: 36.75 and 35.25 should each read 36, the pointer .75 out', () => {
    const drawing = draw('top-dead-centre', { stopReadings: ['36.75 deg', '35.25 deg'] });
    expect(cells(drawing)).toEqual([
      ['Before TDC', '35.25', '36'],
      ['After TDC', '36.75', '36'],
    ]);
    expect(drawing.desc).toContain('the pointer is .75° out, right, it reads 36° on both sides');
  });

  it('a flat pair of stop readings needs no move', () => {
    expect(draw('top-dead-centre', { stopReadings: ['30 deg', '30 deg'] }).desc).toContain(
      'the pointer stands right',
    );
  });
});

describe('scores', () => {
  it('rule the critical score on the side that is looked on, and ring the value past it', () => {
    // NIST/SEMATECH e-Handbook 1.3.5.17.1: the data of the Grubbs example; 245.57 is the outlier, critical value 2.032.
    const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
    const upper = draw('outliers', { values, method: 'grubbs', tail: 'upper' });
    expect(upper.svg.match(/draw-limit/g)).toHaveLength(1);
    expect(upper.svg).toContain('>critical 2.03</text>');
    expect(upper.svg).toContain('>no. 7</text>');
    expect(cells(upper)[7]).toEqual(['7', '245.57', '2.47', 'flagged']);
    expect(draw('outliers', { values, method: 'grubbs' }).svg.match(/draw-limit/g)).toHaveLength(2);
  });
});

describe('the flank of a lobe', () => {
  const given = {
    effectiveMass: '200 g',
    seatLoad: '250 N',
    rate: '40 N/mm',
    lift: '10 mm',
    flank: '70 deg',
  };
  it('is marked where contact is lost first: full lift for simple harmonic motion', () => {
    const drawing = draw('separation-speed', { ...given, law: 'shm' }, 'metric');
    expect(cells(drawing)).toEqual([['70', '10.00']]);
  });
});

describe('a control chart', () => {
  const individuals = [10, 10.1, 9.9, 10, 10.1, 9.9, 10, 10.1, 12, 10];

  it('rings the point past its limits, and the range that goes with it', () => {
    const drawing = draw('control-chart', { individuals, chart: 'individuals' });
    expect(drawing.svg.match(/draw-signal/g)?.length).toBeGreaterThanOrEqual(2);
    // Mean 10.21, mean moving range 4.8/9 = .533, limits 10.21 ± 2.66 × .533 = 8.79 to 11.63, range limit 3.267 × .533 =
    // 1.74: the first eight lie below the mean, 12 is beyond, the steps 1.9 and 2.0 about it are too long.
    expect(drawing.desc).toContain('limits 8.792 to 11.63');
    expect(drawing.desc).toContain('Points that break a rule: 7, 8, 9.');
  });

  it('keeps a moving range with the later of its two values', () => {
    const drawing = draw('control-chart', { individuals, chart: 'individuals' });
    expect(cells(drawing)[0]?.[2]).toBe('');
    expect(cells(drawing)[8]?.[2]).toBe('1.900');
  });
});
