import type { Severity } from '../../shared/document/lay/schema.ts';
import type { SkinKind } from '../../shared/document/project/schema.ts';
import type { Theme } from '../state/sessionStore.ts';

/** Colours of the 3D picture. The light theme is kraft paper on the bench, the dark one a slate board with chalk. */
export interface ScenePalette {
  readonly skins: Record<SkinKind, { readonly base: string; readonly mark: string }>;
  readonly edge: string;
  readonly edgeOpacity: number;
  readonly selected: string;
  readonly ghostOpacity: number;
  readonly portDot: string;
  readonly tag: { readonly paper: string; readonly ink: string };
  readonly flag: Record<Severity, { readonly tape: string; readonly ink: string }>;
  readonly skyLight: string;
  readonly groundLight: string;
}

export const SCENE_PALETTES: Record<Theme, ScenePalette> = {
  light: {
    skins: {
      plain: { base: '#f1ebdf', mark: '#f1ebdf' },
      hot: { base: '#e8a97c', mark: '#8c2f0c' },
      composite: { base: '#4d4b47', mark: '#a8a294' },
      'sharp-edge': { base: '#e9dfc2', mark: '#3a3226' },
      moving: { base: '#cfd6bb', mark: '#4f5c36' },
      wiring: { base: '#d9d3e4', mark: '#4a3f63' },
    },
    edge: '#3b2f1e',
    edgeOpacity: 0.55,
    selected: '#006b62',
    ghostOpacity: 0.16,
    portDot: '#211d17',
    tag: { paper: '#fffdf8', ink: '#211d17' },
    flag: {
      stop: { tape: '#b8330c', ink: '#ffffff' },
      look: { tape: '#f0b92b', ink: '#211d17' },
      note: { tape: '#e9e4d8', ink: '#211d17' },
    },
    skyLight: '#fffaf0',
    groundLight: '#9c8257',
  },
  dark: {
    skins: {
      plain: { base: '#8b938b', mark: '#8b938b' },
      hot: { base: '#a9623a', mark: '#ffc49c' },
      composite: { base: '#2c302e', mark: '#79827c' },
      'sharp-edge': { base: '#8f8b72', mark: '#f4efdc' },
      moving: { base: '#6f7d5c', mark: '#dfeac6' },
      wiring: { base: '#6d6880', mark: '#e2dcf2' },
    },
    edge: '#eef0e6',
    edgeOpacity: 0.3,
    selected: '#8be3cf',
    ghostOpacity: 0.14,
    portDot: '#f2eee2',
    tag: { paper: '#f2eee2', ink: '#1b211e' },
    flag: {
      stop: { tape: '#ff8a5c', ink: '#1b211e' },
      look: { tape: '#f5cb57', ink: '#1b211e' },
      note: { tape: '#aab6b0', ink: '#1b211e' },
    },
    skyLight: '#f4f6ee',
    groundLight: '#2a332f',
  },
};
