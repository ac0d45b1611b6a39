import { createStore } from 'zustand/vanilla';
import type { RecentProject } from '../../shared/desktop/contract.ts';
import type { BenchPorts } from './ports.ts';

interface RecentNeeds {
  readonly desktop: BenchPorts['desktop'];
  /** puts one on the bench */
  readonly open: (id: string) => Promise<void>;
}

export interface RecentState {
  readonly projects: readonly RecentProject[];
  /** the list is shown over the bay of the project that is open */
  readonly isOpen: boolean;
}

/** The projects opened lately: looked up, opened, taken off the list. */
export function createOnRecent({ desktop, open }: RecentNeeds) {
  const store = createStore<RecentState>(() => ({ projects: [], isOpen: false }));
  /** Asks the shell anew: what was missing may be there again. */
  const look = async (): Promise<void> => store.setState({ projects: await desktop.recentProjects() });
  return {
    ...store,
    look,
    show: async (): Promise<void> => {
      await look();
      store.setState({ isOpen: true });
    },
    shut: (): void => store.setState({ isOpen: false }),
    open: async (id: string): Promise<void> => {
      store.setState({ isOpen: false });
      await open(id);
      await look();
    },
    forget: async (id: string): Promise<void> => store.setState({ projects: await desktop.forgetRecent(id) }),
  };
}
