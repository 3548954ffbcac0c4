namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>What a scalar is under the core schema of YAML 1.2, chapter 10.3.</summary>
internal enum ScalarKind
{
    /// <summary>Nothing: empty, <c>~</c>, <c>null</c>.</summary>
    Nothing,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Flag,

    /// <summary>An integer or decimal number.</summary>
    Number,

    /// <summary>Everything else, and everything in quotes.</summary>
    Text,
}
