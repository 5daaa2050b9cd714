/** A small build, made up, in which notes rest on each other and on build.md. */
export const workshop: Readonly<Record<string, string>> = {
  'build.md': `---
title: A car made up for tests
invented: yes
vehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC, seats: 5 }
original: { mass: 1100 kg, mass-source: made up, capacity: 1600 cm3, largest-capacity: 2000 cm3, induction: na, final-drive: 3.9, tyre: 185/70R14 88S, top-speed: 160 km/h }
people: [{ id: JO, name: J. Okoro (invented), role: builder }]
instruments:
  - { id: caliper-1, what: digital caliper, uncertainty: 0.03 mm, checked: 2026-01-08 }
load-cases:
  - { id: drop, says: gearbox on the crossmember, force: 1.4 kN, factor: 3, agreed-with: R. Ansell, agreed-on: 2026-02-10 }
---

Made up.
`,
  'notes/010-engine.md': `---
kind: engine
title: Six cylinders fitted
by: JO
bore: { value: 86.02 mm, with: caliper-1 }
stroke: 86.0 mm
cylinders: 6
torque: 262 N·m
highest-speed: 6200 rpm
mass: 214 kg
---

It went in on the maker's own rubbers; see [the shaft](030-driveline.md).
`,
  'notes/020-crossmember.md': `---
kind: body-structure
title: Crossmember made anew
stages: { cut: 2026-03-10, tacked: 2026-03-12, welded: 2026-03-14 }
pieces:
  - id: crossmember
    role: replacement
    was: { section: HAT 60x40x20x2.0, steel: unknown, wall: { value: 1.95 mm, with: caliper-1 } }
    now: { section: RHS 50x30x2.5 (EN 10219), steel: S355, wall: { value: 2.48 mm, with: caliper-1 } }
    joined-to: { value: 1.20 mm, with: caliper-1 }
    welds:
      - { id: rail, type: fillet, leg: 3.2 mm, length: 110 mm, thickness: 3.0 mm, category: GP, metal: 490 MPa, load-case: drop }
---

The pressed one did not fit.

It was tacked, measured and welded.
`,
  'notes/025-gearbox.md': `---
kind: gearbox
title: Five gears
type: manual
ratios: [{ id: first, ratio: 3.25 }, { id: top, ratio: 0.82 }]
---

From the same car as the engine.
`,
  'notes/030-driveline.md': `---
kind: driveline
title: Shaft
shafts: one
length: 1242 mm
tube-diameter: { value: 76.2 mm, with: caliper-1 }
tube-wall: 1.65 mm
stations:
  - { id: ride, gearbox: 3.0 deg down to the rear, shaft: 5.1 deg down to the rear, pinion: 2.9 deg nose up }
---

Read three times.
`,
};
