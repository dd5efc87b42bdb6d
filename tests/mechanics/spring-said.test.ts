import { computation as fromWire } from '../../server/mechanics/computations/spring-from-wire.ts';
import { computation as load } from '../../server/mechanics/computations/spring-load.ts';
import { inches, lbf, lbfPerInch, mm } from './helpers/quantities.ts';
import { describeSaid } from './helpers/said.ts';

const body = {
  installedHeight: inches(1.9),
  seatLoad: lbf(130),
  rate: lbfPerInch(350),
  netLift: inches(0.56),
  solidHeight: inches(1.15),
};

describeSaid(load, {
  assumes: [
    ['neither limit nor uncertainty', body, ['rate stays the same', 'default limit', 'taken as exact']],
    ['a limit', { ...body, limit: inches(0.06) }, ['rate stays the same', 'taken as exact']],
    ['an uncertainty', { ...body, uncertainty: inches(0) }, ['rate stays the same', 'default limit']],
  ],
  warns: [
    ['room is left', body, ['pring', 'maker']],
    ['the coils nearly meet', { ...body, netLift: inches(0.7499) }, ['pring', 'maker']],
    [
      'they just meet: 1.900 − .750 − 1.150, which is coil bind',
      { ...body, netLift: inches(0.75) },
      ['coils touch', 'pring', 'maker'],
    ],
    ['the coils touch', { ...body, netLift: inches(0.76) }, ['coils touch', 'pring', 'maker']],
  ],
});

/** Shigley, 9th ed., table 10-1: of 14 coils with plain ground ends 13 work, with squared ends 12. */
const wire = {
  wire: mm(2.5),
  meanDiameter: mm(28.5),
  activeCoils: 13,
  totalCoils: 14,
  ends: 'plain-ground',
  shearModulus: { value: 81, unit: 'GPa' },
  density: { value: 7850, unit: 'kg/m3' },
};

describeSaid(fromWire, {
  assumes: [
    ['the usual coils', wire, ['round wire', 'both ends seated']],
    [
      'plain ends, all working',
      { ...wire, activeCoils: 14, ends: 'plain' },
      ['round wire', 'both ends seated'],
    ],
    ['squared', { ...wire, ends: 'squared' }, ['round wire', 'both ends seated', '12, not 13']],
    ['squared and ground', { ...wire, ends: 'squared-ground' }, ['round wire', 'both ends', '12, not 13']],
    [
      'squared, 12 working',
      { ...wire, activeCoils: 12, ends: 'squared' },
      ['round wire', 'both ends seated'],
    ],
  ],
  warns: [['of the maker’s figure first', wire, ['maker']]],
});
