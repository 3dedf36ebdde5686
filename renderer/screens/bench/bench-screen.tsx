/** The bench: asks for a device, or goes on with an inspection. */
import { BenchIdle } from './bench-idle.tsx';
import { InspectionScreen } from './inspection-screen.tsx';

export interface BenchScreenProps {
  /** The number of the inspection; without it the bench waits for a device. */
  readonly inspection?: number | undefined;
}

export const BenchScreen = ({ inspection }: BenchScreenProps) =>
  inspection === undefined ? <BenchIdle /> : <InspectionScreen number={inspection} />;
