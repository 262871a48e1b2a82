"""Where does the whole rack stand, and what is missing in it?

The catalogue as its own swatches on the a*, b* plane with the picture's colours as rings above
it, the same samples as a list, and what a shop does with its rack: mark, bring in, measure. The
shell opens it by one door; nothing else imports it. What is shown follows one state and the
session; colour is computed in ``catalogue`` and ``ranking``.
"""
