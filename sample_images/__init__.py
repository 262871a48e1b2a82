"""What does a customer bring? Six invented pictures and one counter photograph.

`generate` paints everything in this folder from a seed; `scenes` holds one
composition a module, `materials` the paint, paper, canvas and camera that the
scenes share. Nothing here is imported by the program: it reads the finished
files like any other picture.
"""
