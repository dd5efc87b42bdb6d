import { mm } from './quantities.ts';

const perMm = (value: number) => ({ value, unit: 'N/mm' as const });

/** Bhandari, Design of Machine Elements, example 10.19: 1000 N on two springs, the outer 15 mm longer. */
export const bhandari = {
  springs: [
    { rate: perMm(28.253472), freeLength: mm(100), solidHeight: mm(60) },
    { rate: perMm(29.4307), freeLength: mm(85), solidHeight: mm(40) },
  ],
  installedHeight: mm(100 - 24.988839),
  netLift: mm(5),
};
