/** What makes a watch comparable with others: the survey's protocol, asked in one place by checks and figures alike. */
import type { Watch } from './record.js';
import type { SurveySettings } from './survey.js';

type Protocol = SurveySettings['protocol'];

export const withinLength = (minutes: number, protocol: Protocol): boolean =>
  Math.abs(minutes - protocol.minutes) <= protocol.toleranceMinutes;

export const withinTemperature = (celsius: number, protocol: Protocol): boolean =>
  celsius >= protocol.leastCelsius && celsius <= protocol.mostCelsius;

export const withinWind = (beaufort: number, protocol: Protocol): boolean => beaufort <= protocol.mostBeaufort;

/**
 * Whether length, temperature and wind are all as the protocol asks. A watch whose temperature or wind was not told
 * is not: nobody can say that it compares. The season's days are no part of it: a watch outside them is put before
 * the coordinator, who keeps it or sets it aside.
 */
export function withinProtocol(
  watch: Pick<Watch, 'minutes' | 'temperature' | 'wind'>,
  { protocol }: Pick<SurveySettings, 'protocol'>,
): boolean {
  const { minutes, temperature, wind } = watch;
  if (temperature === null || wind === null) return false;
  return (
    withinLength(minutes, protocol) &&
    withinTemperature(temperature.celsius, protocol) &&
    withinWind(wind.beaufort, protocol)
  );
}
