import { describe } from 'vitest';
import { sheets } from '../../../src/calc/links/index.js';
import { sheetRules } from '../sheet-rules.js';

describe('sheets of links and rods', () => sheetRules(sheets));
