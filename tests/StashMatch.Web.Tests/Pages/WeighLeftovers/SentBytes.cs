using Microsoft.JSInterop;

namespace StashMatch.Web.Tests.Pages.WeighLeftovers;

/// <summary>What a browser would have sent.</summary>
internal sealed class SentBytes(byte[] bytes) : IJSStreamReference
{
    public long Length => bytes.Length;

    public ValueTask<Stream> OpenReadStreamAsync(long maxAllowedSize = 512000, CancellationToken cancellationToken = default) =>
        bytes.Length <= maxAllowedSize ? ValueTask.FromResult<Stream>(new MemoryStream(bytes)) : throw new ArgumentOutOfRangeException(nameof(maxAllowedSize));

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
