import { cooling } from './rows/cooling.ts';
import { finders } from './rows/finders.ts';
import { groove } from './rows/groove.ts';
import { instantaneous } from './rows/instantaneous.ts';
import { mass } from './rows/mass.ts';
import { moving } from './rows/moving.ts';
import { order } from './rows/order.ts';
import { steel } from './rows/steel.ts';
import { stefan } from './rows/stefan.ts';
import { surface } from './rows/surface.ts';
import { wire } from './rows/wire.ts';
import { runSection } from './run.ts';

for (const section of [steel, instantaneous, order, moving, stefan, cooling, surface, groove, wire, mass, finders])
  runSection(section);
