import { describe } from 'vitest';
import { sheets } from '../../../src/calc/fasteners/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of fasteners and threads', () => sheetRules(sheets));
describe('formula lines of fasteners and threads', () => formulaRules(sheets));
describe('units of fasteners and threads', () => unitRules(sheets));
