using System.Diagnostics.CodeAnalysis;

namespace SwingStudy.Domain.Problems;

/// <summary>A value, or all the problems that stood in its way. Expected failure is returned; only faults are thrown.</summary>
public sealed record Outcome<T>
    where T : notnull
{
    private Outcome(T? value, IReadOnlyList<Problem> problems)
    {
        Value = value;
        Problems = problems;
    }

    /// <summary>The value; default when there are problems.</summary>
    public T? Value { get; }

    /// <summary>All problems, not the first alone; empty on success.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Takes the value apart.</summary>
    public bool Succeeded([NotNullWhen(true)] out T? value)
    {
        value = Value;
        return Problems.Count == 0;
    }

    /// <summary>Takes value and problems apart.</summary>
    public bool Succeeded([NotNullWhen(true)] out T? value, out IReadOnlyList<Problem> problems)
    {
        problems = Problems;
        return Succeeded(out value);
    }

    /// <summary>A value without problems.</summary>
    public static implicit operator Outcome<T>(T value) => new(value, []);

    /// <summary>A value without problems, where <typeparamref name="T"/> is an interface and cannot convert by itself.</summary>
    public static Outcome<T> Of(T value) => new(value, []);

    /// <summary>One problem instead of a value.</summary>
    public static implicit operator Outcome<T>(Problem problem) => new(default, [problem]);

    /// <summary>Several problems instead of a value.</summary>
    /// <exception cref="ArgumentException"><paramref name="problems"/> is empty.</exception>
    public static Outcome<T> Failed(IReadOnlyList<Problem> problems) =>
        problems.Count == 0
            ? throw new ArgumentException("A failure needs at least one problem.", nameof(problems))
            : new(default, problems);
}
