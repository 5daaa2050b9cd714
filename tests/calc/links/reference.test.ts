import { describe } from 'vitest';
import { sheets } from '../../../src/calc/links/index.js';
import values from '../../reference/links.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of links', () => referenceRules(sheets, values as never));
