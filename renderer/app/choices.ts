import type { SessionChoices, SessionStore } from '../state/sessionStore.ts';

const KEY = 'hosewright-choices';

/** Theme, units and gloves of the last sitting; without them the system's theme, mm, and bare hands. Never anything of a project. */
export function rememberedChoices(): SessionChoices {
  const dark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  const standing: SessionChoices = { theme: dark ? 'dark' : 'light', units: 'mm', gloves: false };
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return standing;
    const { theme, units, gloves } = kept as Partial<SessionChoices>;
    return {
      theme: theme === 'light' || theme === 'dark' ? theme : standing.theme,
      units: units === 'mm' || units === 'inch' ? units : standing.units,
      gloves: gloves === true,
    };
  } catch {
    return standing;
  }
}

/** Puts theme and gloves on the page and keeps the choices for the next sitting. */
export function keepChoices(session: SessionStore): void {
  const keep = (): void => {
    const { theme, units, gloves } = session.getState();
    document.documentElement.dataset['theme'] = theme;
    document.documentElement.dataset['gloves'] = gloves ? 'on' : 'off';
    try {
      localStorage.setItem(KEY, JSON.stringify({ theme, units, gloves }));
    } catch {
      // A browser that keeps nothing still shows the theme for this sitting.
    }
  };
  keep();
  session.subscribe(keep);
}
