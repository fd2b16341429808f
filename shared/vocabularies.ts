/** The closed lists of the record: every word that a stored value may take. Labels people see are in `dialogs/`. */

/** Cloud cover by the okta classes of meteorology: 0, 1–2, 3–4, 5–7, 8 eighths. */
export const CLOUDS = ['clear', 'few', 'scattered', 'broken', 'overcast'] as const;
export type Cloud = (typeof CLOUDS)[number];

export const PATCH_SHAPES = ['rectangle', 'circle', 'area'] as const;
export type PatchShape = (typeof PATCH_SHAPES)[number];

/** What is counted as one open flower of a plant. */
export const COUNTING_UNITS = ['flower', 'head', 'catkin', 'cluster'] as const;
export type CountingUnit = (typeof COUNTING_UNITS)[number];

export const CASTES = ['queen', 'worker'] as const;

/** Only `confirmed` counts in a figure. */
export const STATUSES = ['confirmed', 'unconfirmed', 'set-aside', 'practice'] as const;

/** What a finding asks for: keep it in the record, ask the observer, or put it before the coordinator. */
export const WEIGHTS = ['keep', 'ask', 'query'] as const;

export const ROLES = ['coordinator', 'helper'] as const;
export const CHANGE_ROLES = ['observer', 'coordinator', 'helper', 'program'] as const;
export const QUERY_STATES = ['open', 'later', 'answered'] as const;

/** Monday first: the place in the list, from 1, is the day's ISO number. */
export const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** Under which an observer may let their photographs be published; names are those of SPDX. */
export const PHOTOGRAPH_LICENCES = ['CC-BY-4.0', 'CC-BY-NC-4.0', 'CC0-1.0'] as const;
export type PhotographLicence = (typeof PHOTOGRAPH_LICENCES)[number];

/** How the way to a mail server is kept private: from the first byte, from STARTTLS on, or not at all. */
export const MAIL_SECURITY = ['tls', 'starttls', 'none'] as const;

export const TEMPERATURE_UNITS = ['F', 'C'] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];
export const LENGTH_UNITS = ['ft', 'm'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];
export const SPEED_UNITS = ['mph', 'km/h', 'm/s', 'kn'] as const;
export type SpeedUnit = (typeof SPEED_UNITS)[number];
export const DATE_ORDERS = ['MDY', 'DMY'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];
