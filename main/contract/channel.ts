/**
 * Names that the desktop shell's two halves share. They stand alone so that the preload, which must be one
 * small file, takes nothing else in.
 */
export const CALL_CHANNEL = 'evenhand:call'
export const PUSH_CHANNEL = 'evenhand:push'
