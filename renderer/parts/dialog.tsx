import type { ReactNode } from 'react'
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import './dialog.css'

export interface DialogProps {
  readonly title: string
  readonly isOpen: boolean
  /** Called by Escape or a press beside it; with `mustAnswer` only the dialog's own buttons close it. */
  readonly onClose: () => void
  readonly mustAnswer?: boolean
  readonly children: ReactNode
  /** Buttons, the one that goes on first. */
  readonly actions: ReactNode
}

export function Dialog({ title, isOpen, onClose, mustAnswer = false, children, actions }: DialogProps) {
  return (
    <ModalOverlay
      className="dialog-veil"
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onClose()
      }}
      isDismissable={!mustAnswer}
      isKeyboardDismissDisabled={mustAnswer}
    >
      <Modal className="dialog-frame">
        <AriaDialog className="dialog" role={mustAnswer ? 'alertdialog' : 'dialog'}>
          <Heading slot="title" className="dialog-title">
            {title}
          </Heading>
          <div className="stack">{children}</div>
          <div className="row dialog-actions">{actions}</div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  )
}
