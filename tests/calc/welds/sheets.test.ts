import { describe } from 'vitest';
import { sheets } from '../../../src/calc/welds/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of welds', () => sheetRules(sheets));
describe('formula lines of welds', () => formulaRules(sheets));
describe('units of welds', () => unitRules(sheets));
