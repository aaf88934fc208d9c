using Xunit;

namespace StashMatch.Browser.Tests;

/// <summary>Tests that weigh the whole program: nothing else runs in it meanwhile.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
