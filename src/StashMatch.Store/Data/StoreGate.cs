namespace StashMatch.Store.Data;

/// <summary>Everybody may come to the database file, except while it is being put in another's place.</summary>
public sealed class StoreGate(TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    private readonly Lock _lock = new();
    private int _inside;
    private TaskCompletionSource? _opens;
    private TaskCompletionSource? _empties;

    /// <summary>Comes in, waiting while the gate is shut.</summary>
    public async Task EnterAsync(CancellationToken cancel)
    {
        while (true)
        {
            Task opens;
            lock (_lock)
            {
                if (_opens is null)
                {
                    _inside++;
                    return;
                }

                opens = _opens.Task;
            }

            await opens.WaitAsync(cancel);
        }
    }

    /// <summary>Goes out again.</summary>
    public void Leave()
    {
        lock (_lock)
        {
            _inside--;
            if (_inside == 0)
            {
                _empties?.TrySetResult();
            }
        }
    }

    /// <summary>Shuts the gate, waits until everybody is out, does something alone, and opens it again.</summary>
    /// <exception cref="TimeoutException">Somebody stayed in for twenty seconds; no question within the limits takes two.</exception>
    public async Task<T> AloneAsync<T>(Func<Task<T>> act, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(act);
        Task empties;
        while (true)
        {
            Task opens;
            lock (_lock)
            {
                if (_opens is null)
                {
                    _opens = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
                    _empties = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
                    if (_inside == 0)
                    {
                        _empties.SetResult();
                    }

                    empties = _empties.Task;
                    break;
                }

                opens = _opens.Task;
            }

            await opens.WaitAsync(cancel);
        }

        try
        {
            await empties.WaitAsync(Patience, clock, cancel);
            return await act();
        }
        finally
        {
            lock (_lock)
            {
                _opens.SetResult();
                (_opens, _empties) = (null, null);
            }
        }
    }
}
