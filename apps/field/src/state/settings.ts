/** The person's own choices on this device: units and theme. Small, so they live in localStorage. */
import type { Units } from '@standfast/report';
import { useSyncExternalStore } from 'react';

export type ThemeChoice = 'system' | 'light' | 'dark';

export interface Settings {
  units: Units;
  theme: ThemeChoice;
}

const KEY = 'standfast:settings';
const listeners = new Set<() => void>();
const darkPreferred = matchMedia('(prefers-color-scheme: dark)');
let settings = load();

function load(): Settings {
  const usual: Settings = { units: usesFeet(navigator.language) ? 'us' : 'metric', theme: 'system' };
  try {
    const stored = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Settings>;
    return {
      units: stored.units === 'us' || stored.units === 'metric' ? stored.units : usual.units,
      theme: stored.theme === 'light' || stored.theme === 'dark' ? stored.theme : 'system',
    };
  } catch {
    return usual;
  }
}

/** Countries whose tree workers measure in inches and feet. */
function usesFeet(language: string): boolean {
  return /-(US|LR|MM)$/i.test(language);
}

function announce() {
  document.documentElement.dataset.theme = themeShown();
  for (const listener of listeners) listener();
}

/** The theme now on screen. */
export function themeShown(): 'light' | 'dark' {
  if (settings.theme !== 'system') return settings.theme;
  return darkPreferred.matches ? 'dark' : 'light';
}

export function changeSettings(change: Partial<Settings>) {
  settings = { ...settings, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(settings));
  } catch {
    // Without storage the choice lasts until the tab closes, which is the best that can be done.
  }
  announce();
}

darkPreferred.addEventListener('change', announce);
addEventListener('storage', (event) => {
  if (event.key !== KEY) return;
  settings = load();
  announce();
});

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function useSettings(): Settings {
  return useSyncExternalStore(subscribe, () => settings);
}

export function useThemeShown(): 'light' | 'dark' {
  return useSyncExternalStore(subscribe, themeShown);
}
