import { corpusOf } from '../corpus-of.ts';

corpusOf('part-a-o');
