"""In which language does the window speak?

Words that the window itself sets are Qt's: ``tr`` looks them up in ``LANGUAGE.qm``, which is made
from ``LANGUAGE.ts``. Sentences that come finished from the folders below, which know no language
but English, go through `told`, which finds their pattern in ``LANGUAGE.toml``.
"""

from framing_palette.window.languages.marking import QT_TRANSLATE_NOOP
from framing_palette.window.languages.speaking import LANGUAGES, speak
from framing_palette.window.languages.telling import read_phrasebook, told

__all__ = ["LANGUAGES", "QT_TRANSLATE_NOOP", "read_phrasebook", "speak", "told"]
