import { describe } from 'vitest';
import { sheets } from '../../../src/calc/sections/index.js';
import values from '../../reference/sections.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of cross-sections', () => referenceRules(sheets, values as never));
