/** A sheet over the page: from the bottom on a phone, at the right-hand side on a wide screen. Closes with Escape. */
import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

interface SheetProps {
  title: ReactNode;
  isOpen?: boolean;
  onOpenChange?: (open: boolean) => void;
  children: ReactNode | ((close: () => void) => ReactNode);
  /** Takes most of the screen, for a step that needs room. */
  wide?: boolean;
  /** Holds work in progress: a press beside it or Escape does not close it, and on a phone it is as high as it goes. */
  sturdy?: boolean;
}

export function Sheet({ title, isOpen, onOpenChange, children, wide, sturdy }: SheetProps) {
  return (
    <ModalOverlay
      className="overlay"
      isDismissable={!sturdy}
      isKeyboardDismissDisabled={sturdy ?? false}
      isOpen={isOpen}
      onOpenChange={onOpenChange}
    >
      <Modal className={`sheet ${wide ? 'wide' : ''} ${sturdy ? 'tall' : ''}`}>
        <Dialog>
          {({ close }) => (
            <>
              <header className="sheet-head">
                <Heading slot="title">{title}</Heading>
                <Button className="icon-button" aria-label="Close" onPress={close}>
                  <X aria-hidden />
                </Button>
              </header>
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the arrow keys must reach it. */}
              <section className="sheet-body" tabIndex={0} aria-label="Content">
                {typeof children === 'function' ? children(close) : children}
              </section>
            </>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
