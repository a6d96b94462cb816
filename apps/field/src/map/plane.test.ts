import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planeAround } from './plane.ts';

/** Great-circle distance, haversine formula (R. W. Sinnott 1984, Sky and Telescope 68, 159), sphere as the map's. */
function distanceM(a: [number, number], b: [number, number]): number {
  const [dLat, dLon] = [(b[1] - a[1]) / 2, (b[0] - a[0]) / 2].map((degrees) => (degrees * Math.PI) / 180);
  const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
  const h = Math.sin(dLat!) ** 2 + cos(a[1]) * cos(b[1]) * Math.sin(dLon!) ** 2;
  return 2 * 6_371_008.8 * Math.asin(Math.sqrt(h));
}

const longitude = fc.double({ min: -180, max: 180, noNaN: true });
const latitude = fc.double({ min: -70, max: 70, noNaN: true });

describe('the plane of the map', () => {
  it('leads back to the globe', () => {
    fc.assert(
      fc.property(longitude, latitude, longitude, latitude, (lon0, lat0, lon, lat) => {
        const plane = planeAround([{ longitude: lon0, latitude: lat0 }]);
        const back = plane.toGlobe(plane.toPlane({ longitude: lon, latitude: lat }));
        expect(back.latitude).toBeCloseTo(lat, 9);
        expect(Math.abs(((back.longitude - lon + 540) % 360) - 180)).toBeLessThan(1e-9);
      }),
    );
  });

  it('has true metres near its middle, and says how true they are elsewhere', () => {
    fc.assert(
      fc.property(longitude, latitude, (lon, lat) => {
        const plane = planeAround([{ longitude: lon, latitude: lat }]);
        const there: [number, number] = [lon + 0.004, lat + 0.003];
        const { x, y } = plane.toPlane({ longitude: there[0], latitude: there[1] });
        // A few hundred metres off, the plane is true to a part in a thousand.
        expect(Math.hypot(x, y) / distanceM([lon, lat], there)).toBeCloseTo(1, 3);
      }),
    );
    const plane = planeAround([{ longitude: 10, latitude: 0 }]);
    expect(plane.trueMetres(plane.toPlane({ longitude: 10, latitude: 60 }).y)).toBeCloseTo(0.5, 9);
  });

  it('keeps trees on both sides of the date line together', () => {
    const plane = planeAround([
      { longitude: 179.999, latitude: -17 },
      { longitude: -179.999, latitude: -17 },
    ]);
    expect(Math.abs(plane.toPlane({ longitude: 179.999, latitude: -17 }).x)).toBeLessThan(200);
  });
});
