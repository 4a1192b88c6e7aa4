/** The program's name awaits clearance in trademark registers: it stands here and nowhere else in the code. */
import manifest from '../package.json' with { type: 'json' }

export const PROGRAM = { name: 'Evenhand', command: 'evenhand', version: manifest.version } as const

/** What an administration keeps of the program that it was given by. */
export const PROGRAM_STAMP = `${PROGRAM.name} ${PROGRAM.version}`
