using System.Diagnostics.CodeAnalysis;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.Variables;

/// <summary>The definitions of all variables of a study, under one semantic version.</summary>
public sealed class VariableDictionary
{
    private readonly Dictionary<string, Variable> _byName;

    /// <summary>Takes checked definitions.</summary>
    /// <param name="name">Name of the dictionary.</param>
    /// <param name="version">Semantic version, such as 1.2.0.</param>
    /// <param name="variables">Definitions with distinct names; their order is the column order of tables.</param>
    /// <param name="hash">Hash of the declaration files from which they were read.</param>
    /// <exception cref="ArgumentException">Two variables share a name.</exception>
    public VariableDictionary(string name, Version version, IReadOnlyList<Variable> variables, Sha256 hash)
    {
        Name = name;
        Version = version;
        Variables = variables;
        Hash = hash;
        _byName = variables.ToDictionary(variable => variable.Name, StringComparer.Ordinal);
    }

    /// <summary>Name of the dictionary.</summary>
    public string Name { get; }

    /// <summary>Semantic version.</summary>
    public Version Version { get; }

    /// <summary>Groups of variables, in file order; empty for a dictionary that was not read from files.</summary>
    public IReadOnlyList<VariableGroup> Groups { get; init; } = [];

    /// <summary>What changed from version to version, newest first.</summary>
    public IReadOnlyList<VersionNote> Notes { get; init; } = [];

    /// <summary>All definitions, in column order.</summary>
    public IReadOnlyList<Variable> Variables { get; }

    /// <summary>Hash of the declaration files, recorded with every table version.</summary>
    public Sha256 Hash { get; }

    /// <summary>The definition of that name.</summary>
    public bool TryGet(string name, [NotNullWhen(true)] out Variable? variable) => _byName.TryGetValue(name, out variable);

    /// <summary>The definition of that name.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Variable this[string name] =>
        TryGet(name, out var variable) ? variable : throw new KeyNotFoundException($"The dictionary has no variable '{name}'.");
}
