/** Changes whenever the same weld could be judged, measured or said otherwise. */
export const SCORING_VERSION = '0.7.0';
