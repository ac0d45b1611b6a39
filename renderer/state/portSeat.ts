import type { Adapter } from '../../shared/document/parts/schema.ts';
import type { StackedAdapter } from '../../shared/document/project/fitAdapters.ts';
import { type ResolvedEnd, seatedPort, squarePort } from '../../shared/document/project/resolve.ts';
import type { Port } from '../../shared/document/project/schema.ts';

/** A port as a hose end meets it, with the adapters of the tables that stand on it; those that no table has are left out. */
export function portSeat(port: Port, adapters: readonly Adapter[]): Pick<ResolvedEnd, 'port' | 'stack'> {
  const stack = (port.adapters ?? []).flatMap((use): StackedAdapter[] => {
    const adapter = adapters.find(({ id }) => id === use.adapter);
    return adapter === undefined ? [] : [{ adapter, use }];
  });
  return seatedPort(squarePort(port), stack);
}
