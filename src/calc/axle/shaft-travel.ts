import { sheet } from '../sheet.js';
import { type AxlePosition, axlePath, axlePosition, carriedBy, type Links, type Point } from './linkage.js';
import {
  centreInput,
  closureMethod,
  closureSource,
  linkAssumptions,
  linkInputs,
  linksOf,
  linkValidity,
  travelInputs,
  travelValidity,
} from './parts.js';

/** The shaft between gearbox and pinion, in side view; slopes are positive where the axis runs down to the rear. */
interface ShaftEnds {
  front: Point;
  /** Joint at the pinion at ride height. */
  rear: Point;
  gearboxSlope: number;
  pinionSlope: number;
}

export interface ShaftStand {
  slope: number;
  length: number;
  joint1: number;
  joint2: number;
}

/** Length, slope and joint angles of the shaft at one position of the axle. */
function shaftAt(links: Links, shaft: ShaftEnds, position: AxlePosition): ShaftStand {
  const rear = carriedBy(links, shaft.rear, position);
  const [back, down] = [shaft.front.x - rear.x, shaft.front.z - rear.z];
  const slope = Math.atan2(down, back);
  return {
    slope,
    length: Math.hypot(back, down),
    joint1: Math.abs(slope - shaft.gearboxSlope),
    joint2: Math.abs(shaft.pinionSlope + position.rotation - slope),
  };
}

/** Positions each way from ride height among which the greatest and smallest length are sought. */
const STATIONS = 12;

const angle = (symbol: string, joint: string, where: string) =>
  ({ symbol, unit: 'deg', says: `angle of the joint at the ${joint} at ${where}` }) as const;
const at = (symbol: string, says: string) => ({ symbol, unit: 'mm', says }) as const;

export const shaftTravel = sheet({
  id: 'axle-shaft-travel',
  subject: 'axle',
  title: 'Joint angles and length of the shaft through travel',
  purpose:
    'What the turn and the path of the axle do to both joints and to the length of the shaft, from ride height to both ends of travel.',
  inputs: {
    ...linkInputs,
    ...centreInput,
    frontX: at('x_5', 'joint at the gearbox: forward of the axle centre'),
    frontZ: at('z_5', 'joint at the gearbox: above the ground'),
    rearX: at('x_6', 'joint at the pinion: forward of the axle centre'),
    rearZ: at('z_6', 'joint at the pinion: above the ground'),
    gearboxSlope: { symbol: 'v_0', unit: 'deg', says: 'slope of the gearbox output, down to the rear positive' },
    pinionSlope: { symbol: 'v_p', unit: 'deg', says: 'slope of the pinion at ride height, nose up positive' },
    ...travelInputs,
  },
  results: {
    shaftSlope: {
      symbol: 'v_1',
      unit: 'deg',
      says: 'slope of the shaft at ride height, down to the rear positive',
      tex: '\\arctan\\frac{@frontZ - @rearZ}{@frontX - @rearX}',
      step: true,
    },
    joint1Ride: { ...angle('\\theta_1', 'gearbox', 'ride height'), tex: '\\left|@shaftSlope - @gearboxSlope\\right|' },
    joint2Ride: { ...angle('\\theta_2', 'pinion', 'ride height'), tex: '\\left|@pinionSlope - @shaftSlope\\right|' },
    joint1Bump: angle('\\theta_{1,b}', 'gearbox', 'full bump'),
    joint2Bump: angle('\\theta_{2,b}', 'pinion', 'full bump'),
    joint1Droop: angle('\\theta_{1,r}', 'gearbox', 'full droop'),
    joint2Droop: angle('\\theta_{2,r}', 'pinion', 'full droop'),
    lengthRide: {
      symbol: 'l_0',
      unit: 'mm',
      says: 'length between the joints at ride height',
      tex: '\\sqrt{(@frontX - @rearX)^2 + (@frontZ - @rearZ)^2}',
    },
    lengthLongest: { symbol: 'l_{max}', unit: 'mm', says: 'greatest length through travel' },
    lengthShortest: { symbol: 'l_{min}', unit: 'mm', says: 'smallest length through travel' },
  },
  method: `${closureMethod} The joint at the pinion moves and turns with the axle. The greatest and smallest lengths are taken from ride height and 12 positions each way.`,
  assumptions: [
    ...linkAssumptions,
    'Side view only: the shaft runs straight along the car in plan. Engine and gearbox keep their place.',
  ],
  sources: [closureSource],
  validity: [
    linkValidity,
    travelValidity,
    { says: 'the joint at the gearbox must lie ahead of the joint at the pinion', holds: (x) => x.frontX > x.rearX },
  ],
  calculate: (x) => {
    const links = linksOf(x);
    const shaft: ShaftEnds = {
      front: { x: x.frontX, z: x.frontZ },
      rear: { x: x.rearX, z: x.rearZ },
      gearboxSlope: x.gearboxSlope,
      pinionSlope: x.pinionSlope,
    };
    const path = (travel: number) =>
      axlePath(links, travel, STATIONS).map((position) => shaftAt(links, shaft, position));
    const ride = shaftAt(links, shaft, axlePosition(links, 0));
    const [ups, downs] = [path(x.bump), path(-x.droop)];
    const [bump, droop] = [ups.at(-1)!, downs.at(-1)!];
    const lengths = [ride, ...ups, ...downs].map((s) => s.length);
    return {
      shaftSlope: ride.slope,
      joint1Ride: ride.joint1,
      joint2Ride: ride.joint2,
      joint1Bump: bump.joint1,
      joint2Bump: bump.joint2,
      joint1Droop: droop.joint1,
      joint2Droop: droop.joint2,
      lengthRide: ride.length,
      lengthLongest: Math.max(...lengths),
      lengthShortest: Math.min(...lengths),
    };
  },
  examples: [
    {
      given: {
        lowerAxleX: '0 mm',
        lowerAxleZ: '220 mm',
        lowerBodyX: '500 mm',
        lowerBodyZ: '220 mm',
        upperAxleX: '0 mm',
        upperAxleZ: '420 mm',
        upperBodyX: '500 mm',
        upperBodyZ: '420 mm',
        centreZ: '320 mm',
        frontX: '1500 mm',
        frontZ: '420 mm',
        rearX: '300 mm',
        rearZ: '320 mm',
        gearboxSlope: '2.0 deg',
        pinionSlope: '2.0 deg',
        bump: '100 mm',
        droop: '100 mm',
      },
      gives: {
        shaftSlope: '4.764 deg',
        joint1Ride: '2.764 deg',
        joint2Ride: '2.764 deg',
        joint1Bump: '2.00 deg',
        joint2Bump: '2.00 deg',
        lengthRide: '1204.2 mm',
        lengthShortest: '1189.9 mm',
      },
      source: {
        document:
          'Equal level arms: the axle keeps its slope and moves forward by 500 − √(500² − 100²) = 10.10 mm, worked by hand, regression only',
        basis: 'derived',
      },
    },
  ],
});
