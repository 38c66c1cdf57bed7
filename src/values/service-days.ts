/** The unit of days on which there was work; a meter may count them from the outings on record. */
export const SERVICE_DAYS = 'service-days';
