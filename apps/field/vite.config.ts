/**
 * The browser app's build: React, the demonstration case packed as a zip, and a service worker that keeps
 * everything for use without a network.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import react from '@vitejs/plugin-react';
import { zipSync } from 'fflate';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const DEMONSTRATION = resolve(import.meta.dirname, '../../packages/casefile/demo');
const DEMONSTRATION_ZIP = 'demonstration.zip';

/** Serves and emits the demonstration case folder as one zip, so that it cannot drift from its source. */
function demonstrationZip(): Plugin {
  const pack = (): Uint8Array => {
    const files: Record<string, Uint8Array> = {};
    if (existsSync(DEMONSTRATION)) {
      for (const entry of readdirSync(DEMONSTRATION, { withFileTypes: true, recursive: true })) {
        if (!entry.isFile()) continue;
        const path = join(entry.parentPath, entry.name);
        const name = relative(DEMONSTRATION, path).split(sep).join('/');
        if (name === 'case.json' || name.startsWith('traces/') || name.startsWith('photos/')) {
          files[name] = readFileSync(path);
        }
      }
    }
    // A fixed date keeps the build's bytes the same from one run to the next.
    return zipSync(files, { level: 9, mtime: new Date('2000-01-01T12:00:00Z') });
  };
  return {
    name: 'standfast-demonstration-zip',
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        if (request.url?.split('?')[0]?.endsWith(`/${DEMONSTRATION_ZIP}`) !== true) return next();
        response.setHeader('content-type', 'application/zip');
        response.end(pack());
      });
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: DEMONSTRATION_ZIP, source: pack() });
    },
  };
}

export default defineConfig({
  base: './',
  build: { target: 'es2022', chunkSizeWarningLimit: 1500 },
  worker: { format: 'es' },
  plugins: [
    react(),
    demonstrationZip(),
    VitePWA({
      registerType: 'prompt',
      includeAssets: ['icon.svg', 'icon-192.png', 'icon-512.png'],
      manifest: {
        name: 'Standfast',
        short_name: 'Standfast',
        description: 'From resistance-drilling traces to a tree stability decision that holds up.',
        start_url: '.',
        scope: '.',
        display: 'standalone',
        background_color: '#FBFAF6',
        theme_color: '#0E5A64',
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,ttf,woff2,wasm,zip,webmanifest}'],
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
        navigateFallback: 'index.html',
        cleanupOutdatedCaches: true,
      },
    }),
  ],
});
