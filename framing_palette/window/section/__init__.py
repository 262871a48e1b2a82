"""How does the stack lie in the rabbet?

The section through one side of the frame, drawn true and enlarged, and the list of its parts.
``scene`` turns millimetres into pixels, ``materials`` paints each part as what it is, ``view`` lets
edges be dragged and layers be carried, ``parts`` is the same by keys and typing. Only ``steps``
use this folder.
"""
