import type { SessionChoices, SessionStore } from '../state/sessionStore.ts';

const KEY = 'hosewright-choices';

/** Theme and units of the last sitting; without them the system's theme, and mm. Never anything of a project. */
export function rememberedChoices(): SessionChoices {
  const dark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  const standing: SessionChoices = { theme: dark ? 'dark' : 'light', units: 'mm' };
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return standing;
    const { theme, units } = kept as Partial<SessionChoices>;
    return {
      theme: theme === 'light' || theme === 'dark' ? theme : standing.theme,
      units: units === 'mm' || units === 'inch' ? units : standing.units,
    };
  } catch {
    return standing;
  }
}

/** Puts the theme on the page and keeps theme and units for the next sitting. */
export function keepChoices(session: SessionStore): void {
  const keep = (): void => {
    const { theme, units } = session.getState();
    document.documentElement.dataset['theme'] = theme;
    try {
      localStorage.setItem(KEY, JSON.stringify({ theme, units }));
    } catch {
      // A browser that keeps nothing still shows the theme for this sitting.
    }
  };
  keep();
  session.subscribe(keep);
}
