"""What are the pictures made of? Noise, curves, pigment, brushes, grounds, camera.

Pure values in, pure values out: arrays of linear or encoded sRGB, masks from 0
to 1 and a seeded random generator. Files are touched by `picture_files` alone.
Scenes import from here; nothing here imports a scene.
"""
