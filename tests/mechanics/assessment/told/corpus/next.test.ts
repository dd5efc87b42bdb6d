import { corpusOf } from '../corpus-of.ts';

corpusOf('next');
