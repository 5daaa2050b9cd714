import type { Sheet } from '../sheet.js';
import { linkLengthChange } from './adjust.js';
import { shaftTravel } from './shaft-travel.js';
import { axleSideView } from './side-view.js';
import { axleTravel } from './travel.js';

export const sheets = [axleSideView, axleTravel, linkLengthChange, shaftTravel] as unknown as readonly Sheet[];
