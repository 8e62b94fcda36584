/**
 * Moisture content that wood comes to rest at, %, in air of this relative humidity (0..1) and temperature.
 * Source: Hailwood and Horrobin's two-hydrate equation with the coefficients for degrees Celsius of the
 * Wood Handbook (FPL-GTR-282, chapter 4, equation 4-5); mean error under 0.13 %, at most 0.9 % (Simpson 1973).
 */
export function restingMoisture(humidityShare: number, celsius: number): number {
  const t = celsius;
  const W = 349 + 1.29 * t + 0.0135 * t * t;
  const K = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const K1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const K2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const Kh = K * humidityShare;
  const bound = (K1 * Kh + 2 * K1 * K2 * Kh * Kh) / (1 + K1 * Kh + K1 * K2 * Kh * Kh);
  return (1800 / W) * (Kh / (1 - Kh) + bound);
}
