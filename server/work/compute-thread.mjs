/*
 * Where a thread begins: it starts without the loader that the process was started with, so that loader is set up
 * first, and what reads TypeScript is imported afterwards.
 */
import { register } from 'tsx/esm/api';

register();
const { computeHere } = await import('./compute-worker.ts');
export default computeHere;
