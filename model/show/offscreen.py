"""A window that nobody sees: VTK draws into it, and its pixels are read back.

Imported only when a picture is asked for: the graphics libraries take their time to load.
"""

from __future__ import annotations

import ctypes
import os

import numpy as np
import numpy.typing as npt
from vtkmodules.util.numpy_support import numpy_to_vtk, vtk_to_numpy
from vtkmodules.vtkCommonCore import VTK_UNSIGNED_CHAR, vtkFloatArray, vtkLogger, vtkUnsignedCharArray
from vtkmodules.vtkCommonDataModel import vtkImageData
from vtkmodules.vtkIOImage import vtkJPEGWriter, vtkPNGWriter
from vtkmodules.vtkRenderingCore import vtkLight, vtkRenderer, vtkRenderWindow

# Rendering is done by the plug-in that this import registers.
import vtkmodules.vtkRenderingOpenGL2  # isort: skip
import vtkmodules.vtkRenderingFreeType  # noqa: F401  # isort: skip

from ..errors import FileError

Pixels = npt.NDArray[np.uint8]

GRAPHICS = "no graphics library to draw pictures with (Debian, Ubuntu: apt-get install libegl1 libgl1)"

QUALITY = 85  # of 100


def new_window() -> vtkRenderWindow:
    """A window off the screen. Without a library to draw with, rendering would end the process.

    Raises FileError where there is none.
    """
    os.environ.setdefault("EGL_LOG_LEVEL", "fatal")
    vtkLogger.SetStderrVerbosity(vtkLogger.VERBOSITY_OFF)
    window = vtkRenderWindow()
    if window.GetClassName() == "vtkOSOpenGLRenderWindow" and not loads("libOSMesa.so.8", "libOSMesa.so"):
        raise FileError(GRAPHICS)
    window.SetOffScreenRendering(True)
    window.SetMultiSamples(0)
    window.SetAlphaBitPlanes(1)
    return window


def loads(*names: str) -> bool:
    """Whether one of some shared libraries can be loaded."""
    for name in names:
        try:
            ctypes.CDLL(name)
        except OSError:
            continue
        return True
    return False


def taken(window: vtkRenderWindow, renderer: vtkRenderer, width: int, height: int) -> Pixels:
    """One rendering of what a renderer holds, its colours unlit, as they are or as its actors light them.

    Returns (height, width, 4), from the top row down; colours are multiplied by their alpha.
    """
    if not window.HasRenderer(renderer):
        window.GetRenderers().RemoveAllItems()
        window.AddRenderer(renderer)
        renderer.AutomaticLightCreationOff()
        lamp = vtkLight()  # without one no surface knows where it is
        lamp.SetLightTypeToHeadlight()
        renderer.AddLight(lamp)
    window.SetSize(width, height)
    window.Render()
    grabbed = vtkUnsignedCharArray()
    window.GetRGBACharPixelData(0, 0, width - 1, height - 1, 0, grabbed, 0)
    pixels: Pixels = vtk_to_numpy(grabbed).reshape(height, width, 4)[::-1]
    return pixels


def depths_of(window: vtkRenderWindow) -> Pixels:
    """How deep what was rendered lies, from the bottom row up.

    Returns (height, width, 3) bytes, the lowest first, of a number of 24 bits that is 0 nearest to the eye:
    textures of VTK hold bytes alone.
    """
    width, height = window.GetSize()
    grabbed = vtkFloatArray()
    window.GetZbufferData(0, 0, width - 1, height - 1, grabbed)
    whole = (vtk_to_numpy(grabbed) * np.float32(2**24 - 1)).astype("<u4")
    depths: Pixels = whole.view(np.uint8).reshape(height, width, 4)[..., :3]
    return depths


def thinned(pixels: Pixels, fine: int) -> Pixels:
    """The mean of every fine x fine pixels, colours no longer multiplied by their alpha."""
    height, width, parts = pixels.shape
    means = pixels.reshape(height // fine, fine, width // fine, fine, parts).mean(
        axis=(1, 3), dtype=np.float32
    )
    means[..., :3] *= 255.0 / np.maximum(means[..., 3:], 1.0)
    means = np.minimum(means.round(), 255.0)
    return np.asarray(means.astype(np.uint8))


def png(pixels: Pixels) -> bytes:
    """A PNG file's bytes. pixels: (height, width, 3 or 4), from the top row down."""
    writer = vtkPNGWriter()
    writer.SetCompressionLevel(9)
    return _encoded(writer, pixels)


def jpeg(pixels: Pixels) -> bytes:
    """A JPEG file's bytes. pixels: (height, width, 3), from the top row down."""
    writer = vtkJPEGWriter()
    writer.SetQuality(QUALITY)
    return _encoded(writer, pixels)


def _encoded(writer: vtkPNGWriter | vtkJPEGWriter, pixels: Pixels) -> bytes:
    height, width, parts = pixels.shape
    image = vtkImageData()
    image.SetDimensions(width, height, 1)
    flat = np.ascontiguousarray(pixels[::-1].reshape(-1, parts))
    image.GetPointData().SetScalars(numpy_to_vtk(flat, deep=True, array_type=VTK_UNSIGNED_CHAR))
    writer.SetInputData(image)
    writer.WriteToMemoryOn()
    writer.Write()
    return bytes(vtk_to_numpy(writer.GetResult()))
