import { half95, type Estimate } from '../measure/estimate.ts';

/** A measured figure for programs; what is infinite is null there. */
export const estimateJson = (one: Estimate) => ({
  value: one.value,
  sd: one.sd,
  dof: finite(one.dof),
  half95: finite(half95(one)),
});

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
