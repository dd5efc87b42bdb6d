import { corpusOf } from '../corpus-of.ts';

corpusOf('part-p-w');
