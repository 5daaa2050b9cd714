import { describe } from 'vitest';
import { sheets } from '../../../src/calc/sections/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of cross-sections and members', () => sheetRules(sheets));
describe('formula lines of cross-sections and members', () => formulaRules(sheets));
describe('units of cross-sections and members', () => unitRules(sheets));
