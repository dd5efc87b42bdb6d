export { QUANTITY } from '../ratio-view.ts';
