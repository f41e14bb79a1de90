"""Per-pixel mean and variance of the frames in a folder with numpy, as fast as it goes: strips of 80 rows over memory maps, sums of
x - first and of its square in single precision, two threads. Makes the frames first when asked to."""

import glob
import sys
import threading
import time

import numpy as np

WIDTH, HEIGHT, FRAMES, HEADER_BYTES = 6000, 4000, 24, 2880


def card(keyword, value):
    return f"{keyword:<8}= {value:>20}".ljust(80)


def make(folder):
    """Frames of a bias-like level: a fixed pattern of 5 ADU and a noise of 8 ADU, unsigned 16 bits."""
    header = card("SIMPLE", "T") + card("BITPIX", 16) + card("NAXIS", 2) + card("NAXIS1", WIDTH) + card("NAXIS2", HEIGHT)
    header += card("BZERO", 32768) + card("BSCALE", 1) + "END"
    random = np.random.default_rng(1)
    pattern = random.normal(500, 5, HEIGHT * WIDTH).astype(np.float32)
    noise = random.normal(0, 8, HEIGHT * WIDTH + 4096 * FRAMES).astype(np.float32)
    for k in range(FRAMES):
        codes = np.rint(pattern + noise[k * 4096:k * 4096 + HEIGHT * WIDTH]).astype(np.int32)
        data = (codes - 32768).astype(">i2").tobytes()
        with open(f"{folder}/frame_{k:02d}.fits", "wb") as file:
            file.write(header.ljust(HEADER_BYTES).encode("ascii") + data + bytes(-len(data) % 2880))


def moments(files, threads=2, rows=80):
    maps = [np.memmap(file, dtype=">i2", mode="r", offset=HEADER_BYTES, shape=(HEIGHT, WIDTH)) for file in files]
    mean, variance = np.empty((HEIGHT, WIDTH), np.float32), np.empty((HEIGHT, WIDTH), np.float32)
    n = len(files)

    def work(worker):
        for row in range(worker * rows, HEIGHT, rows * threads):
            first = maps[0][row:row + rows].astype(np.float32)
            sums, squares, difference = np.zeros_like(first), np.zeros_like(first), np.empty_like(first)
            for frame in maps[1:]:
                np.subtract(frame[row:row + rows], first, out=difference, casting="unsafe")
                sums += difference
                np.multiply(difference, difference, out=difference)
                squares += difference
            shift = sums / n
            mean[row:row + rows] = first + shift + 32768
            variance[row:row + rows] = (squares - sums * shift) / (n - 1)

    workers = [threading.Thread(target=work, args=(worker,)) for worker in range(threads)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    return mean, variance


if sys.argv[1] == "make":
    make(sys.argv[2])
else:
    names = sorted(glob.glob(sys.argv[2] + "/*.fits"))
    for _ in range(int(sys.argv[3])):
        start = time.perf_counter()
        means, variances = moments(names)
        print(f"{time.perf_counter() - start:.4f} {means[-1, -1]} {variances[-1, -1]}")
