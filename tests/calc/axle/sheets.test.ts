import { describe } from 'vitest';
import { sheets } from '../../../src/calc/axle/index.js';
import { sheetRules } from '../sheet-rules.js';

describe('sheets of a live axle', () => sheetRules(sheets));
