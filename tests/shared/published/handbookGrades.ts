/** Grades of PTFE, NBR, CPE, EPDM, silicone in a fluid: handbooks, from memory (table 9.1). */
export const HANDBOOK_CORES = ['ptfe-smooth', 'nbr', 'cpe', 'epdm', 'silicone'] as const;

export const HANDBOOK_GRADES = {
  petrol: ['A', 'B', 'B', 'X', 'X'],
  methanol: ['A', 'B', 'B', 'A', 'B'],
  diesel: ['A', 'A', 'B', 'X', 'C'],
  'engine-oil': ['A', 'A', 'A', 'X', 'B'],
  coolant: ['A', 'B', 'B', 'A', 'A'],
} as const;
