using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Memory;

namespace StashMatch.Pictures;

/// <summary>How the image library is let in: it knows no picture format, so it can decode nothing, and it may take little memory. Pixels go in raw; a writer is named where one is used.</summary>
internal static class RawPixels
{
    public static Configuration Only { get; } = new()
    {
        MemoryAllocator = MemoryAllocator.Create(new MemoryAllocatorOptions { AllocationLimitMegabytes = 64, MaximumPoolSizeMegabytes = 16 }),
    };
}
