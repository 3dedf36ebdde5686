/** Opens the station of a folder, says so, and holds it until the process is ended. */
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';

const station = await openStation({ folder: process.argv[2] ?? '' });
process.stdout.write(`${isRefusal(station) ? station.code : 'open'}\n`);
setInterval(() => undefined, 1000);
