/** People of the demo and a device of it that can be inspected, as the tour names them (`demo-data`). */
export const demoValues = { badge: 'HP10024', device: '4R02S-SYNB2', pin: '271828' } as const;
