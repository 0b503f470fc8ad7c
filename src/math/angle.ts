declare const unit: unique symbol;

/** Angle in radians. Plain numbers pass: radians are the model's native unit. */
export type Rad = number & { readonly [unit]?: 'rad' };
/** Angle in degrees. Only `deg` and `toDeg` make one, so degrees never leak in unannounced. */
export type Deg = number & { readonly [unit]: 'deg' };

const RAD_PER_DEG = Math.PI / 180;

/** Marks a plain number as degrees. */
export const deg = (value: number): Deg => value as Deg;

/** Degrees to radians. */
export const toRad = (angle: Deg): Rad => angle * RAD_PER_DEG;

/** Radians to degrees. */
export const toDeg = (angle: Rad): Deg => (angle / RAD_PER_DEG) as Deg;

/** Shorthand for tables: a number of degrees, in radians. */
export const rad = (degrees: number): Rad => degrees * RAD_PER_DEG;
