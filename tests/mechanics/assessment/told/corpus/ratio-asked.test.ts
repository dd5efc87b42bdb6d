import { corpusOf } from '../corpus-of.ts';

corpusOf('ratio-asked');
