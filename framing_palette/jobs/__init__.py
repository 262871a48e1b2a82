"""What have we agreed?

A job holds everything that designer and client decided about one piece of art: who it is for, the
picture and its regions, both measurements, the designs that were shown and the one that was
chosen. Plain frozen values flow in and out; files and databases are touched only in ``*_files``
modules and ``store``. Only the two faces, ``cli`` and ``window``, import this folder.
"""
